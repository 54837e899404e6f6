package sheet

import (
	"regexp"
	"strings"
)

// dots are those between the words of a name, not those of a decimal fraction.
var dots = regexp.MustCompile(`([a-z])\.([a-z0-9])|([0-9])\.([a-z])`)

// inWords puts a statement of the design, or a name in it, as people at the bench
// say it: "rack columns: 4" for `rack.columns = 4`. Only a sum keeps its signs.
func inWords(statement string) string {
	text := statement
	for dots.MatchString(text) {
		text = dots.ReplaceAllString(text, "$1$3 $2$4")
	}
	text = strings.NewReplacer("_", " ", `"`, "", "[", "", "]", "").Replace(text)
	if name, value, ok := strings.Cut(text, " = "); ok && !strings.ContainsAny(value, "+*") {
		return name + ": " + value
	}
	return text
}
