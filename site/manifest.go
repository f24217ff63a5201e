package site

import (
	"encoding/json"

	"setbook/calc/words"
)

// ManifestIcon is one icon of the manifest, its address relative to the manifest.
type ManifestIcon struct {
	Source  string `json:"src"`
	Sizes   string `json:"sizes"`
	Type    string `json:"type"`
	Purpose string `json:"purpose"`
}

// Manifest is the web app manifest, by which a phone installs the site.
func Manifest(r words.Reader, a Assets, icons []ManifestIcon) ([]byte, error) {
	return json.MarshalIndent(struct {
		Name        string         `json:"name"`
		Short       string         `json:"short_name"`
		Description string         `json:"description"`
		Lang        string         `json:"lang"`
		ID          string         `json:"id"`
		Start       string         `json:"start_url"`
		Scope       string         `json:"scope"`
		Display     string         `json:"display"`
		Background  string         `json:"background_color"`
		Theme       string         `json:"theme_color"`
		Icons       []ManifestIcon `json:"icons"`
	}{
		r.Word(shell.Name), r.Word(shell.Name), r.Word(shell.Intro), r.Language.Tag,
		"./", "./", "./", "standalone", a.Light, a.Light, icons,
	}, "", "\t")
}
