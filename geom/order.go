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
