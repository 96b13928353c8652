package main

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"reflect"
	"slices"
	"strings"
	"sync"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/posture"
	"gatepost/program/publish/preview"
	"gatepost/program/publish/site"
	"gatepost/program/publish/store"
)

// keepsake is a website as a preview shows it, without a problem, and what it was made
// from, so that after a change only what it touches is read and made again. The nil
// keepsake has nothing.
//
// What is no client's is there; a client's pages are made when somebody looks at them.
type keepsake struct {
	sources  sources
	studio   program.Studio
	problems program.Problems // warnings, found in reading
	look     string           // hash of the templates
	album    *posture.Album
	web      *site.Site
	publics  []site.Public
	pages    []store.File
	clients  map[string]func() *client // by slug
}

// reread reads the folder, but for clients whose files are as they were, while all that
// every client is read with is.
func (j *job) reread() (*keepsake, program.Problems) {
	k := &keepsake{sources: j.sources(siteOutput)}
	same := j.kept.unchanged(k.sources)
	if len(same) > 0 {
		pages := map[string]string{}
		for _, a := range same {
			pages[a.Slug] = a.Page
		}
		studio, problems, ok := intake.ReadBut(j.root.FS(), j.builtIn, j.chance, pages)
		if ok {
			k.studio = studio
			k.studio.Clients = append(k.studio.Clients, same...)
			slices.SortFunc(k.studio.Clients, func(a, b program.Assessment) int { return strings.Compare(a.Slug, b.Slug) })
			for _, a := range same {
				problems = append(problems, ofClient(j.kept.problems, a.Slug)...)
			}
			return k, problems
		}
	}
	studio, problems := j.read()
	k.studio = studio
	return k, problems
}

// unchanged are the clients who would be read as they were.
func (k *keepsake) unchanged(now sources) (same []program.Assessment) {
	if k == nil || k.sources.shared == "" || k.sources.shared != now.shared {
		return nil
	}
	for _, a := range k.studio.Clients {
		if own := now.own[a.Slug]; own != "" && own == k.sources.own[a.Slug] {
			same = append(same, a)
		}
	}
	return same
}

// use takes over what was made of the same.
func (k *keepsake) use(old *keepsake) {
	k.album = posture.NewAlbum(&k.studio.Library)
	if !old.planned(&k.studio) {
		return
	}
	k.album, k.publics = old.album, old.publics
	if !old.public(k) {
		return
	}
	k.pages = old.pages
	for i := range k.studio.Clients {
		a := &k.studio.Clients[i]
		if j := slices.IndexFunc(old.studio.Clients, func(b program.Assessment) bool { return b.Slug == a.Slug }); j >= 0 && reflect.DeepEqual(&old.studio.Clients[j], a) {
			k.clients[a.Slug] = old.clients[a.Slug]
		}
	}
}

// planned reports whether the public programs of a studio would be planned and printed as
// they were. Pages of words have no part in that.
func (k *keepsake) planned(studio *program.Studio) bool {
	if k == nil {
		return false
	}
	was, is := k.studio.Library, studio.Library
	was.Pages, is.Pages = nil, nil
	return reflect.DeepEqual(k.studio.Coach, studio.Coach) && reflect.DeepEqual(was, is) && reflect.DeepEqual(k.studio.Public, studio.Public)
}

// public reports whether all pages that are no client's would be made as they were.
func (k *keepsake) public(now *keepsake) bool {
	return k.look == now.look && reflect.DeepEqual(k.studio.Library.Pages, now.studio.Library.Pages) && reflect.DeepEqual(k.studio.Notes, now.studio.Notes)
}

// remake makes the site of the folder as it is; nil where problems stop it.
func (j *job) remake() (k *keepsake, messages string) {
	k, problems := j.reread()
	if problems.Stop() {
		return nil, j.reported(problems)
	}
	look := j.templates()
	k.problems, k.look, k.clients = problems, hashLook(look), map[string]func() *client{}
	k.use(j.kept)
	m := made{album: k.album, publics: k.publics, pages: k.pages}
	k.web = j.website(&m, &k.studio, look, false)
	if problems = append(problems, m.shared...); problems.Stop() {
		return nil, j.reported(problems)
	}
	k.publics, k.pages = m.publics, m.pages
	with := making{studio: &k.studio, part: siteOutput, album: k.album, web: k.web}
	for i := range k.studio.Clients {
		if a := &k.studio.Clients[i]; k.clients[a.Slug] == nil {
			k.clients[a.Slug] = sync.OnceValue(func() *client {
				c := with.client(a)
				c.forget()
				return c
			})
		}
	}
	j.kept = k
	return k, ""
}

// files are those that are there.
func (k *keepsake) files() map[string][]byte { return below(k.pages, siteFolder) }

// later are the folders of shared clients, by their path in the site.
func (k *keepsake) later(j *job) map[string]preview.Folder {
	all := map[string]preview.Folder{}
	for i := range k.studio.Clients {
		if a := &k.studio.Clients[i]; a.Share == program.ShareSite {
			all["c/"+a.Page] = func() (map[string][]byte, string) { return j.folder(k, a.Slug) }
		}
	}
	return all
}

// folder makes a client's pages, or says what is wrong.
func (j *job) folder(k *keepsake, slug string) (map[string][]byte, string) {
	c := k.clients[slug]()
	if problems := append(k.web.Lacking(), c.problems...); problems.Stop() {
		return nil, j.reported(problems)
	}
	return below(c.files, siteFolder), ""
}

const siteFolder = "site/"

// below are the files of a folder by their path in it.
func below(files []store.File, folder string) map[string][]byte {
	all := map[string][]byte{}
	for _, f := range files {
		if path, ok := strings.CutPrefix(f.Path, folder); ok {
			all[path] = f.Bytes
		}
	}
	return all
}

// hashLook is a hash of the templates; one that cannot be read is like none, and
// has been reported.
func hashLook(look []fs.FS) string {
	sum := sha256.New()
	for _, layer := range look {
		_ = fs.WalkDir(layer, ".", func(name string, entry fs.DirEntry, err error) error {
			if err != nil || entry.IsDir() {
				return err
			}
			return hashFile(sum, layer, name, entry)
		})
	}
	return hex.EncodeToString(sum.Sum(nil))
}
