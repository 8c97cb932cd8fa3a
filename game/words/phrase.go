package words

import "strings"

// Capital begins a text with a capital letter, where it begins with a letter of the
// English alphabet.
func Capital(text string) string {
	if text == "" {
		return ""
	}
	if c := text[0]; 'a' <= c && c <= 'z' {
		return string(c-'a'+'A') + text[1:]
	}
	return text
}

// Listed writes a list: "a, b and c".
func Listed(all []string) string {
	if n := len(all); n > 1 {
		return strings.Join(all[:n-1], ", ") + " and " + all[n-1]
	}
	return strings.Join(all, "")
}
