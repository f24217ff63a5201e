package site

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"

	"setbook/calc"
	"setbook/calc/datasheet"
	embedded "setbook/calc/embed"
	"setbook/calc/link"
	"setbook/calc/page"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// counterPages are the pages for whoever puts this book on a counter, on a site of their own, or beside their own goods.
var counterPages = []*told{&counter, &embedding, &sheets, &hosting}

var counter = told{
	path: "counter/", title: "At the counter", asks: "The book on a supplier’s tablet, on a supplier’s pages, with a supplier’s own figures.",
	parts: []part{
		{slot: page.CounterLinks},
		{
			head: "A tablet for everybody",
			says: []words.Msg{
				"These manners hold on this device alone, until you end them here.",
				"Keys and letters are large. Nothing that is typed is kept. When nobody has touched the screen for the time below, a countdown of 20 seconds shows; then everything is cleared and the contents page opens. A touch keeps it. Cleared is whatever the book holds on this device: entries, countdowns, jobs. Use a device that holds none of your own.",
				"Each page can print a slip, and show a square code that carries the figures away on the customer’s phone. Links to other sites are plain text.",
				"These are manners and no lock: a device’s own setting for a single app is the lock.",
			},
			slot: page.Manners,
		},
		{
			head: "The figures of your own goods",
			says: []words.Msg{"A data sheet that is kept on this device is offered on every page that it can fill. Check it, then keep it, on the page for data sheets."},
		},
	},
}

const embedExample = `<script src="https://HOST/embed/embed.js" defer></script>

<setbook-calculator calculator="bed" label="Notch to bed"
  fixed="notch=square" hide="hold,skim" sheet="mortars.csv" units="us">
</setbook-calculator>`

const frameExample = `<iframe src="https://HOST/embed/frame/en/?calculator=bed&amp;fixed=notch%3Dsquare&amp;hide=hold,skim"
  title="Notch to bed" width="100%" height="900"
  sandbox="allow-scripts allow-same-origin allow-modals allow-popups allow-popups-to-escape-sandbox"></iframe>`

// messageExample is what the page around is told at first, cut to one answer: the program's own message, so that its figures are those that
// it gives. It is "" where the calculator of the other examples is not in the book.
func messageExample(r words.Reader, calculators []*calc.Calculator) string {
	i := slices.IndexFunc(calculators, func(c *calc.Calculator) bool { return c.ID == "bed" })
	if i < 0 {
		return ""
	}
	c := calculators[i]
	e := c.Example()
	bed, ok := c.Solve(e).Answer(c.ID)
	if !ok {
		return ""
	}
	r.Style.System = unit.US
	var out bytes.Buffer
	message := embedded.Answers(c.ID, link.Format(c, e, unit.US), false, &calc.Sheet{Answers: []calc.Answer{bed}}, r)
	if err := json.Indent(&out, []byte(message), "", "  "); err != nil {
		return ""
	}
	return out.String()
}

var embedding = told{
	path: "embedding/", title: "Put a calculator on your own page", asks: "One script and one element, or a plain frame.",
	parts: []part{
		{
			head: "With one script",
			says: []words.Msg{"HOST is where this book stands. The element may stand as often as you like on a page, each with another calculator."},
			code: embedExample,
			rows: []named{
				means("calculator", "The name of a page of this book, as in its address."),
				means("fixed", "Inputs that are shown and cannot be changed: part of an entry, written as in a link. Copy a link to an entry and take what you need of it."),
				means("start", "What stands in the fields at first."),
				means("hide", "Inputs that are not asked for, parted by commas. Their figures stand folded under “Set by this page”, since the answers rest on them."),
				means("sheet", "A data sheet beside your page. The script fetches it and hands it to the frame, where your origin is named."),
				means("site-sheet", "A data sheet in the folder “sheets” of this book."),
				means("units", "us or metric. Without it the visitor chooses."),
				means("theme", "light or dark. Without it the device decides. It may be changed while the page is open."),
				means("lang", "The language: en for English, es for Spanish."),
				means("clear", "Seconds, 30 to 3600: the manners of a counter tablet, in the frame."),
				means("label", "What the frame is called to those who do not see it."),
			},
		},
		{
			head: "With no script",
			says: []words.Msg{"A frame takes the same settings in its address. It keeps the height that you give it."},
			code: frameExample,
		},
		{
			head: "Colours",
			says: []words.Msg{"Three custom properties on the element, each as six hexadecimal digits. The contrast is worked out: a colour that would bring any text under 7 to 1 is refused, the book’s own stays, and the console says so."},
			rows: []named{
				means("--setbook-paper", "The ground."),
				means("--setbook-ink", "Letters and edges."),
				means("--setbook-line", "Lines, links, and the choice that is made."),
			},
		},
		{
			head: "What your page is told",
			says: []words.Msg{
				"Only named origins are told anything. The host names them in site/parents.txt, or builds with -parents; the list is empty unless somebody fills it. A page that is not named shows the calculator, and learns nothing of what is typed; what it sends is not read. An origin that is taken off the list is gone from a phone once that has taken the newer version: mostly at the second visit.",
				"The element gives events that rise through the page: setbook-ready, setbook-answers, setbook-height. A plain frame posts the same messages. Each is an object of this shape, where setbook is the version of the shape and every value is in an SI unit:",
			},
			made: messageExample,
			rows: []named{
				means("ready", "The calculator listens from now on."),
				means("answers", "At the start and after every change. While stale is true, what stands in the fields cannot be worked, and the answers are those before it."),
				means("height", "The height in CSS pixels. The script sets the frame to it."),
			},
		},
		{
			head: "What your page may say",
			says: []words.Msg{"A named origin may post these and nothing else. The element has a method for the first."},
			code: `document.querySelector("setbook-calculator").fill({ width: "3/8 in" })`,
			rows: []named{
				means("fields", "Texts by key, each with its unit. Fixed inputs stay as they are."),
				means("theme", "light, dark or auto."),
				means("sheet", "The text of a data sheet."),
			},
		},
		{
			head: "Permissions, and what is lost without each",
			rows: []named{
				means("allow-scripts", "The calculator does not run at all."),
				means("allow-same-origin", "Nothing of the book can be loaded into the frame."),
				means("allow-modals", "A slip cannot be printed."),
				means("allow-popups", "The link to the whole page does nothing."),
				means("allow-popups-to-escape-sandbox", "The whole page, once opened, is as restricted as the frame."),
				means("storage", "Some browsers keep nothing for a frame of another site. Then every visit starts anew, and needs the network."),
			},
		},
		{
			head: "Out of reach of the network",
			says: []words.Msg{"After one visit the frame works with no signal: its service worker keeps the whole book, apart for each site around it. Your own page must see to itself. The script may be kept for an hour and, with no network, for a year."},
		},
	},
}

const csvExample = `product,type,bag,liquid,liquid_min,liquid_max,yield,foot_time,times_at
Greyline Bed 20,mortar,50 lb,5.2 qt,4.8 qt,5.5 qt,0.6 ft3,16 h,70 F
Harrow Flex,mortar,20 kg,5.5 L,5.1 L,5.9 L,13.5 L,24 h,23 C`

const jsonExample = `[ {"product": "Tidewell Seal", "type": "sealant", "cartridge": "600 mL",
   "capability": "25 %", "temp_min": "40 F", "temp_max": "95 F"} ]`

var sheets = told{
	path: "datasheet/", title: "A data sheet of your own", asks: "Check a file of your own products, see what it fills, and keep it on this device.",
	parts: []part{
		{slot: page.Checker},
		{
			head: "How a file is written",
			says: []words.Msg{
				"CSV with commas, a first line that names the columns, and a product a line; or JSON, one list of objects. UTF-8, with a point for decimals. Each figure has its unit, as in 50 lb or 20 kg. A field that a product does not have stays empty.",
				"The product and its type are needed, everything else is not. A type is mortar, grout, coating or sealant. A name stands once.",
			},
			code: csvExample + "\n\n" + jsonExample,
		},
		{head: "The fields", rows: fields()},
	},
}

// fields tells of every column of a data sheet.
func fields() (rows []named) {
	for _, f := range datasheet.Fields() {
		rows = append(rows, named{f.Key, words.Say("{label}, as in {example}. For: {types}.",
			words.Named("label", f.Label), words.Text("example", f.Example), words.Text("types", strings.Join(f.Types, "/")))})
	}
	return rows
}

const hostExample = `go run ./scripts/build                      the whole site, in dist/
go run ./scripts/build -base /setbook/      for a folder of your site
go run ./scripts/build -parents https://shop.example
go run ./scripts/build -sheets ../our-sheets`

var hosting = told{
	path: "hosting/", title: "Host the book yourself", asks: "The whole book is a folder of files. Any web host can serve it.",
	parts: []part{
		{
			head: "Make it and put it up",
			steps: []words.Msg{
				"Install Go, take the source, and build.",
				"Copy everything in dist to your host: to the top of a site, or to a folder of it.",
				"Serve it by https. With plain http nothing works out of reach of the network.",
				"Open it once, switch the network off, and load it again: it must work.",
			},
			code: hostExample,
		},
		{
			head: "In a folder",
			says: []words.Msg{"Every page finds its parts by addresses that are relative to itself, so the same files work in any folder. Only the page for a missing page may stand for any address: give the folder with -base so that it finds its way."},
		},
		{
			head: "Headers",
			says: []words.Msg{
				"Netlify reads them from netlify.toml. With another host, set the same ones: the file is short and says what each is for. Without them the book works, and is less guarded.",
				"In a folder of another site, put the folder in front of each path.",
			},
			rows: []named{
				means("application/wasm", "The type for .wasm. With another type the program starts later."),
				means(".br .gz", "Each file stands there compressed too. A host that sends those saves four fifths of the first visit."),
				means("/assets/", "These names hold the hash of their content: let them be kept for ever."),
				means("/embed/", "The only pages that may stand in a frame of another site, and the script for it. Everything else refuses frames."),
				means("404.html", "The page for a missing page."),
			},
		},
		{
			head: "A newer version",
			says: []words.Msg{"Build again and copy everything. A phone that has the book fetches the new one by itself and offers it; nothing is changed under what is being typed."},
		},
		{
			head: "Data sheets in the book",
			says: []words.Msg{"Every file of the folder that is given with -sheets is checked, and the build stops at a fault. The files stand in the folder “sheets” of the book, and a page elsewhere names one with site-sheet."},
		},
	},
}
