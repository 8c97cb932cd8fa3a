package geom

import "cmp"

// Order sorts a short list by compare and keeps the order of equals. It sorts by
// insertion: no list here grows past a few dozen, and the library's sorts, made
// anew for every type they are used with, weigh on the page's download.
func Order[T any](list []T, compare func(a, b T) int) {
	for i := 1; i < len(list); i++ {
		for j := i; j > 0 && compare(list[j-1], list[j]) > 0; j-- {
			list[j-1], list[j] = list[j], list[j-1]
		}
	}
}

// Ascending sorts a short list of numbers or words, as [Order] does.
func Ascending[T cmp.Ordered](list []T) {
	for i := 1; i < len(list); i++ {
		v := list[i]
		j := i
		for ; j > 0 && v < list[j-1]; j-- {
			list[j] = list[j-1]
		}
		list[j] = v
	}
}

// Insert puts x at the i-th place of the list, whose memory it may use again. The
// library's own takes any number of values and weighs ten times as much in the page.
func Insert[S ~[]T, T any](s S, i int, x T) S {
	s = append(s, x)
	copy(s[i+1:], s[i:])
	s[i] = x
	return s
}
