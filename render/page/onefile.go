package page

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"html"
	"io"
	"io/fs"
	"regexp"
	"strings"
	"sync"

	"fusewright/harness"
	"fusewright/harness/network/trace"
)

//go:embed sealed/api.js
var sealedAPI string

// held is what the page answers from when it is one file.
type held struct {
	Of      string        `json:"of"` // names what is kept in the browser
	Model   *Model        `json:"model"`
	Drawing string        `json:"drawing"`
	Bench   *Bench        `json:"bench"`
	Planner *PlannerAlone `json:"planner"`
	// Circuits are those of all that draws, by its label and, behind "|", the situation; Worst is
	// the situation in which each loses most.
	Circuits map[string]*Circuit `json:"circuits"`
	Worst    map[string]string   `json:"worst"`
	Answers  map[string]any      `json:"answers"` // by path
}

// WriteOneFile writes the page as one HTML document that asks no server and fetches nothing:
// style, script and figures stand in it, and its own security policy lets nothing else in.
func WriteOneFile(w io.Writer, r *harness.Review) error {
	var drawing []byte
	if len(r.Circuit.Wires) <= mostDrawn {
		var err error
		if drawing, err = Drawing(r); err != nil {
			return err
		}
	}
	layout, err := Layout(r)
	if err != nil {
		return err
	}
	m, planner := Of(r, nil), PlannerFor(r)
	m.Planner = planner.Plan
	h := held{Of: m.Heading.File + " " + m.Heading.Revision, Model: m, Drawing: string(drawing), Bench: BenchOf(r), Planner: planner,
		Answers: map[string]any{"/api/layout": layout}}
	h.circuits(r)
	data, err := json.Marshal(h) // with < and > escaped: nothing in it ends the element
	if err != nil {
		return err
	}
	shell, err := oneFileShell()
	if err != nil {
		return err
	}
	title := m.Heading.Title
	if title == "" {
		title = m.Heading.File
	}
	var b bytes.Buffer
	b.WriteString(shell.head)
	fmt.Fprintf(&b, "<title>%s</title>\n", html.EscapeString(title))
	b.WriteString(shell.middle)
	fmt.Fprintf(&b, `<script type="application/json" id="held">%s</script>`+"\n", data)
	b.WriteString(shell.end)
	_, err = w.Write(b.Bytes())
	return err
}

// mostDrawn is how many wires are drawn on one sheet for the page as one file: that of a larger harness
// takes longer than all its papers, which show it in parts.
const mostDrawn = 300

// mostCircuits is how many circuits are held in every situation; of more, each is in its worst alone.
const mostCircuits = 300

func (h *held) circuits(r *harness.Review) {
	h.Circuits, h.Worst = map[string]*Circuit{}, map[string]string{}
	shown := map[string]bool{}
	for _, way := range h.Model.Circuits {
		shown[way.Of] = true
	}
	t, situations := trace.New(r.Corners), r.Design.Situations
	all := len(shown)*len(situations) <= mostCircuits
	for _, draw := range trace.Draws(r.Circuit) {
		name := drawName(draw)
		if !shown[name] || h.Worst[name] != "" {
			continue
		}
		worst := t.Worst(draw)
		for i, s := range situations {
			if all || i == worst {
				h.Circuits[name+"|"+s.Name] = circuitOf(r, t.Of(draw, i))
			}
		}
		h.Worst[name] = situations[worst].Name
	}
}

// shell is what is the same in every such file.
type shell struct{ head, middle, end string }

var (
	styleLink  = regexp.MustCompile(`<link rel="stylesheet" href="/assets/([\w-]+\.css)">\n`)
	scriptLink = regexp.MustCompile(`<script type="module" src="/assets/([\w-]+\.js)"></script>\n`)
	iconLink   = regexp.MustCompile(`<link rel="icon"[^>]*>\n`)
	titleText  = regexp.MustCompile(`<title>[^<]*</title>\n`)
)

// oneFileShell is made once, of the document and all that it loads.
var oneFileShell = sync.OnceValues(func() (s shell, err error) {
	document, err := fs.ReadFile(Assets, "index.html")
	if err != nil {
		return s, err
	}
	text := string(document)
	var style strings.Builder
	for _, m := range styleLink.FindAllStringSubmatch(text, -1) {
		sheet, err := fs.ReadFile(Assets, m[1])
		if err != nil {
			return s, err
		}
		style.Write(sheet)
	}
	entry := scriptLink.FindStringSubmatch(text)
	if entry == nil {
		return s, fmt.Errorf("index.html loads no module")
	}
	script, err := bundle(Assets, entry[1], map[string]string{"api.js": sealedAPI})
	if err != nil {
		return s, err
	}
	if strings.Contains(script, "</script") || strings.Contains(style.String(), "</style") {
		return s, fmt.Errorf("a module or style sheet would end its own element")
	}
	policy := fmt.Sprintf("default-src 'none'; script-src '%s'; style-src '%s'; base-uri 'none'; form-action 'none'", hashOf(script), hashOf(style.String()))
	for _, link := range []*regexp.Regexp{scriptLink, styleLink, iconLink} {
		text = link.ReplaceAllString(text, "")
	}
	from, to, found := strings.Cut(text, titleText.FindString(text))
	body, rest, closed := strings.Cut(to, "</body>")
	if !found || !closed {
		return s, fmt.Errorf("index.html has no title or no body")
	}
	from = strings.Replace(from, "<meta charset=\"utf-8\">\n", "<meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\" content=\""+policy+"\">\n", 1)
	if !strings.Contains(from, policy) {
		return s, fmt.Errorf("index.html does not begin with its character set")
	}
	head, afterHead, _ := strings.Cut(body, "</head>")
	s.head = from
	s.middle = head + "<style>" + style.String() + "</style>\n</head>" + afterHead
	s.end = `<script type="module">` + script + "</script>\n</body>" + rest
	return s, nil
})

// hashOf is the source of a security policy that lets in one text.
func hashOf(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}
