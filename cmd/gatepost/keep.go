package main

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"reflect"

	"gatepost/program"
	"gatepost/program/posture"
	"gatepost/program/publish/site"
	"gatepost/program/publish/store"
)

// keepsake is a website that was made without a problem and what it was made
// from, so that after a change only what it touches is made again. The nil
// keepsake has nothing.
type keepsake struct {
	studio  program.Studio
	look    string // hash of the templates
	album   *posture.Album
	clients map[string]*client
	publics []site.Public
	pages   []store.File
	same    bool // the public part is the same as what is being made
}

// keep takes what was made of a studio.
func (j *job) keep(studio *program.Studio, m made) *keepsake {
	k := &keepsake{studio: *studio, look: hashLook(j.templates()), album: m.album, publics: m.publics, pages: m.pages,
		clients: map[string]*client{}}
	for _, c := range m.clients {
		k.clients[c.slug] = c
	}
	return k
}

// of is what can be used for a studio: nothing, where what every page is made
// from has changed.
func (k *keepsake) of(studio *program.Studio, look []fs.FS) *keepsake {
	if k == nil || k.look != hashLook(look) || !reflect.DeepEqual(k.studio.Coach, studio.Coach) ||
		!reflect.DeepEqual(k.studio.Library, studio.Library) {
		return nil
	}
	usable := *k
	usable.same = reflect.DeepEqual(k.studio.Public, studio.Public) && reflect.DeepEqual(k.studio.Notes, studio.Notes)
	return &usable
}

// drawn are the exercises' drawings of a studio.
func (k *keepsake) drawn(studio *program.Studio) *posture.Album {
	if k == nil {
		return posture.NewAlbum(&studio.Library)
	}
	return k.album
}

// public says whether the pages that are no client's can be used.
func (k *keepsake) public() bool { return k != nil && k.same }

// client is what was made of the same assessment; nil: nothing.
func (k *keepsake) client(a *program.Assessment) *client {
	if k == nil {
		return nil
	}
	for i := range k.studio.Clients {
		if old := &k.studio.Clients[i]; old.Slug == a.Slug && reflect.DeepEqual(old, a) {
			return k.clients[a.Slug]
		}
	}
	return nil
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
