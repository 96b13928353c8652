package intake

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// Slug is the folder name for a client's name: small letters a to z, digits and
// hyphens, at most 40. Accents are taken off. It is an error when nothing of
// the name is left.
func Slug(name string) (string, error) {
	var b strings.Builder
	for _, r := range norm.NFKD.String(strings.ToLower(name)) {
		switch plain := plainLetters[r]; {
		case unicode.Is(unicode.Mn, r):
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			b.WriteRune(r)
		case plain != "":
			b.WriteString(plain)
		default:
			b.WriteByte(' ')
		}
	}
	slug := strings.Join(strings.Fields(b.String()), "-")
	if len(slug) > 40 {
		slug = strings.Trim(slug[:40], "-")
	}
	if slug == "" {
		return "", fmt.Errorf("%q gives no folder name: use letters a to z or digits", name)
	}
	if devices.MatchString(slug) {
		return "", fmt.Errorf("%q is the name of a device where some disks are used: add a letter or a number", name)
	}
	return slug, nil
}

// devices are names that Windows keeps for itself, with any ending (published:
// Microsoft, "Naming Files, Paths, and Namespaces").
var devices = regexp.MustCompile(`^(con|prn|aux|nul|com[0-9]|lpt[0-9])$`)

// isSlug says whether a name may be that of a folder or, before its ending, of a
// file.
func isSlug(name string) bool { return slugForm.MatchString(name) && !devices.MatchString(name) }

// plainLetters are letters of Latin alphabets that do not decompose.
var plainLetters = map[rune]string{'ß': "ss", 'æ': "ae", 'œ': "oe", 'ø': "o", 'ł': "l", 'đ': "d", 'ð': "d", 'þ': "th", 'ı': "i"}

// suggestSlug is a better name for a file, or a made-up one.
func suggestSlug(name string) string {
	if slug, err := Slug(name); err == nil {
		return slug
	}
	return "my-file"
}
