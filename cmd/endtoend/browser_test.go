package endtoend

import (
	"context"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
)

// hostileLawns are names that printers choke on: long without a blank, long, right to left, with commas, quotes and what looks like HTML.
var hostileLawns = []string{
	strings.Repeat("Endless", 11), strings.Repeat("long and ", 8) + "longer", "\u05e8\u05d7\u05d5\u05d1 \u05d4\u05d0\u05dc\u05d5\u05df 12", "\u202eturned",
	`"quoted", and with, commas`, "<b>5 Oak & Sons", "=1+1", "\u6771\u4eac\u901a\u308a",
}

// longDay is an invented day of 24 lawns of three zones each, some of them of hostile names, and a short one before it.
func longDay() string {
	lines := []string{
		`{"fact":"setting","name":"state","value":"OH"}`,
		`{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"cool","capacity_gal":160,"heel_gal":2},{"letter":"c","name":"iron","capacity_gal":90,"heel_gal":1}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5}]}`,
		`{"fact":"product","name":"warm weed of a name that does not end soon, 60 DF","form":"liquid","kind":"herbicide","actives":[{"name":"metsulfuron-methyl","percent_by_weight":60}],"registration":"00000-1","grasses":["bermudagrass_common"],"rate_low_fl_oz_per_1000_sqft":1,"rate_high_fl_oz_per_1000_sqft":1.5}`,
		`{"fact":"product","name":"iron","form":"dry","kind":"iron","grasses":["all_turf"],"rate_low_oz_per_1000_sqft":1,"rate_high_oz_per_1000_sqft":4}`,
		`{"fact":"mix","name":"W","parts":[{"product":"warm weed of a name that does not end soon, 60 DF","rate_fl_oz_per_1000_sqft":1.2,"target":"clover"},{"product":"iron","rate_oz_per_1000_sqft":2}]}`,
	}
	var names []string
	for i := range 24 {
		name := fmt.Sprintf("%d Sample Street", 100+i)
		if i < len(hostileLawns) {
			name = hostileLawns[i]
		}
		names = append(names, name)
		lines = append(lines, fmt.Sprintf(`{"fact":"lawn","name":%q,"customer":"A. Example","address":%q,"phone":"555-0101","zones":[{"name":"front","grass":"bermudagrass_common","area_sqft":1000},{"name":"back","grass":"bermudagrass_common","area_sqft":1500},{"name":"side strip","grass":"bermudagrass_common","area_sqft":500}]}`, name, name))
	}
	lay := func(date string, names []string) {
		at := func(hour, minute int) string { return fmt.Sprintf(`"at":"%sT%02d:%02d:00-05:00"`, date, hour, minute) }
		lines = append(
			lines, fmt.Sprintf(`{"fact":"day_opened",%s,"date":%q,"operator":"R. Example"}`, at(6, 0), date),
			fmt.Sprintf(`{"fact":"loaded",%s,"into":"a","volume_gal":120,"mix":"W","for":"gun"}`, at(6, 10)),
			fmt.Sprintf(`{"fact":"lined_up",%s,"supply":["a"],"return":"a"}`, at(6, 20)),
			fmt.Sprintf(`{"fact":"pushed_back",%s,"into":"b","volume_gal":3}`, at(6, 25)),
			fmt.Sprintf(`{"fact":"weather",%s,"wind_mph":6,"wind_from":"SW","temp_f":64}`, at(6, 30)),
		)
		for i, name := range names {
			hour, minute := 7+i/3, i%3*20
			lines = append(
				lines, fmt.Sprintf(`{"fact":"visit_begun",%s,"lawn":%q}`, at(hour, minute), name),
				fmt.Sprintf(`{"fact":"sprayed",%s,"lawn":%q,"zones":["front","back","side strip"],"applicator":"gun","by":"area"}`, at(hour, minute+10), name),
				fmt.Sprintf(`{"fact":"visit_done",%s,"lawn":%q}`, at(hour, minute+12), name),
			)
		}
	}
	lay("2026-05-27", names[:1])
	lay("2026-05-28", names)
	return strings.Join(lines, "\n") + "\n"
}

// browser is the Chromium to open pages in: the one that TINTLINE_CHROMIUM names, else one on the path.
func browser(t *testing.T) func(args ...string) []byte {
	t.Helper()
	path := os.Getenv("TINTLINE_CHROMIUM")
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if found, err := exec.LookPath(name); path == "" && err == nil {
			path = found
		}
	}
	if path == "" {
		t.Skip("skipped: no chromium on the path and TINTLINE_CHROMIUM names none, so no page was opened in a browser")
	}
	profile := t.TempDir()
	return func(args ...string) []byte {
		t.Helper()
		ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
		defer cancel()
		c := exec.CommandContext(ctx, path, append([]string{
			"--headless", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--no-first-run", "--user-data-dir=" + profile, "--window-size=1300,1000",
		}, args...)...)
		out, err := c.Output()
		if err != nil {
			t.Fatalf("%s %v: %v", path, args, err)
		}
		return out
	}
}

// measures is run in a page of frames: it lists each element of them that is wider than what it stands in, or reaches beyond the width of its
// page, and how many cells there were.
const measures = `<script>
addEventListener("load", () => {
  const out = [];
  for (const f of document.querySelectorAll("iframe")) {
    const body = f.contentDocument.body, page = body.getBoundingClientRect();
    for (const e of body.querySelectorAll("h1, h2, h3, p, table, td, th, dt, dd, section")) {
      const r = e.getBoundingClientRect();
      if (e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0 || r.right > page.right + 1 || r.left < page.left - 1)
        out.push(f.name + " " + e.tagName + " " + e.textContent.slice(0, 40));
    }
    if (body.querySelectorAll("td, dd").length < 5 || page.height < 100)
      out.push(f.name + " is empty");
  }
  document.body.innerHTML = "";
  document.body.append("CLIPPED [" + out.join("; ") + "]");
});
</script>`

// A page object of a PDF as Chromium writes them.
var pdfPage = regexp.MustCompile(`/Type\s*/Page[^s]`)

// TestPagesInABrowser: what is handed out as HTML is opened in Chromium. No cell is clipped whatever the names, a long day's tally is one
// page of letter and of A4, and each day of a record begins on its own page (02 NCAC 09L .1402).
func TestPagesInABrowser(t *testing.T) {
	run := browser(t)
	dir := t.TempDir()
	book := filepath.Join(dir, "t.db")
	if _, complaint, code := program(t, longDay(), "enter", "-", "--book", book); code != 0 {
		t.Fatal(complaint)
	}
	page := func(name string, args ...string) string {
		t.Helper()
		out, complaint, code := program(t, "", append(args, "--as", "html", "--book", book)...)
		if code != 0 {
			t.Fatal(complaint)
		}
		path := filepath.Join(dir, name+".html")
		if err := os.WriteFile(path, []byte(out), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	sheet := page("sheet", "season", "--lawn", hostileLawns[0])
	tally, all := page("tally", "tally", "--date", "2026-05-28"), page("all", "records", "--date", "2026-05-28")
	frames := "<!DOCTYPE html><body>"
	for _, path := range []string{
		tally, all, page("years", "tally", "--by", "year"), page("card", "card"), page("season", "season"),
		sheet, page("notice", "notice", "--lawn", hostileLawns[1]),
	} {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		frames += fmt.Sprintf(`<iframe name="%s" width="1200" height="9000" srcdoc="%s"></iframe>`, filepath.Base(path), html.EscapeString(string(text)))
	}
	framed := filepath.Join(dir, "frames.html")
	if err := os.WriteFile(framed, []byte(frames+measures), 0o600); err != nil {
		t.Fatal(err)
	}
	if got := html.UnescapeString(string(run("--dump-dom", "file://"+framed))); !strings.Contains(got, "CLIPPED []") {
		t.Errorf("clipped, or nothing measured: %.2000s", got[strings.LastIndex(got, "<body"):])
	}
	count := func(path string) int {
		t.Helper()
		out := path + ".pdf"
		run("--no-pdf-header-footer", "--print-to-pdf="+out, "file://"+path)
		pdf, err := os.ReadFile(out)
		if err != nil {
			t.Fatal(err)
		}
		return len(pdfPage.FindAll(pdf, -1))
	}
	if n := count(tally); n != 1 {
		t.Errorf("the tally of a day of 24 lawns is %d pages of letter", n)
	}
	if n := count(sheet); n != 1 {
		t.Errorf("the season of a lawn is %d pages of letter", n)
	}
	text, err := os.ReadFile(tally)
	if err != nil {
		t.Fatal(err)
	}
	a4 := filepath.Join(dir, "a4.html")
	if err := os.WriteFile(a4, []byte(strings.Replace(string(text), "@page {", "@page { size: A4;", 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	if n := count(a4); n != 1 {
		t.Errorf("the tally of a day of 24 lawns is %d pages of A4", n)
	}
	apart := count(page("first", "records", "--date", "2026-05-27")) + count(all)
	if n := count(page("both", "records", "--from", "2026-05-27", "--to", "2026-05-28")); n != apart || apart < 3 {
		t.Errorf("two days are %d pages, and one by one %d", n, apart)
	}
}
