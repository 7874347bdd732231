package main

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
	"coldreckon/report/words"
)

// A printer holds the flags that say how and where something is printed.
type printer struct {
	formats []string // those on offer; the first is taken when nothing tells another

	file, format, paper, date string
	force                     bool            // write over what another program wrote
	large                     bool            // large print
	wholeSheet                bool            // whose PDF needs a larger sheet for that
	units                     quantity.System // of its reader, once info is known
}

// extensions are the formats that the end of a file's name stands for.
var extensions = map[string]string{".pdf": "pdf", ".txt": "text", ".md": "md", ".csv": "csv", ".json": "json", ".html": "html", ".htm": "html"}

// addFlags gives a command the flags of a printer with these formats.
func (p *printer) addFlags(cmd *cobra.Command, formats ...string) {
	p.formats = formats
	flags := cmd.Flags()
	flags.VarP((*fileName)(&p.file), "output", "o", "write it to `OUT`; - is standard output")
	flags.BoolVar(&p.force, "force", false, "write OUT over a file that coldreckon did not write, or a locked one")
	flags.StringVar(&p.paper, "paper", "", "a4 or letter; follows the units when not told")
	flags.StringVar(&p.date, "date", "", "the day printed on it, as `YYYY-MM-DD`")
	cmd.RegisterFlagCompletionFunc("paper", cobra.FixedCompletions([]string{"a4", "letter"}, cobra.ShellCompDirectiveNoFileComp))
	if len(formats) > 1 {
		flags.StringVar(&p.format, "format", "", words.Either(formats)+"; follows the name of OUT, else "+formats[0])
		cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(formats, cobra.ShellCompDirectiveNoFileComp))
	}
}

// addLargeFlag gives a command whose pages can grow the flag of large print.
func (p *printer) addLargeFlag(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&p.large, "large", false, "large print")
}

// addLargeSheetFlag is addLargeFlag for pages that are drawn as a whole.
func (p *printer) addLargeSheetFlag(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&p.large, "large", false, "large print; a PDF comes on A3 or 11 by 17 in paper")
	p.wholeSheet = true
}

// addNameFlags gives a command the flags that name people.
func addNameFlags(cmd *cobra.Command, preparedFor, preparedBy *string) {
	cmd.Flags().StringVar(preparedFor, "for", "", "print that it was prepared for `NAME`")
	cmd.Flags().StringVar(preparedBy, "by", "", "print that it was prepared by `NAME`")
}

// largePrint is how much larger large print is: 10 points come out as 16.
const largePrint = 1.6

// toStdout reports whether it goes to standard output.
func (p *printer) toStdout() bool { return p.file == "" || p.file == "-" }

// settle looks at the flags before anything is reckoned and decides on the
// format. inputs are the files that it is made from, which it must not replace.
func (p *printer) settle(out environment, inputs ...string) error {
	for _, input := range inputs {
		if !p.toStdout() && out.stands(input, p.file) {
			return misuse("Name another file with -o.", "%s: it would overwrite the file that it is made from", p.file)
		}
	}
	if p.format == "" {
		p.format = p.formats[0]
		if ending := filepath.Ext(p.file); ending != "" && ending != "." {
			p.format = extensions[strings.ToLower(ending)]
			if !slices.Contains(p.formats, p.format) {
				return misuse(p.otherEnding(), "-o: no file that ends in %q is written. Use %s.", ending, words.Either(p.endings()))
			}
		}
	}
	if !slices.Contains(p.formats, p.format) {
		return noSuch("--format", p.format, words.Either(p.formats))
	}
	if _, _, ok := sheet.Paper(strings.ToLower(p.paper)).Size(); p.paper != "" && !ok {
		return noSuch("--paper", p.paper, "a4 or letter")
	}
	if _, err := reportDate(p.date, out.env); err != nil {
		return err
	}
	if p.format == "pdf" && p.toStdout() && isTerminal(out.stdout) {
		return misuse("Name a file, such as -o report.pdf.", "standard output: a PDF is not for a terminal")
	}
	if p.toStdout() {
		return nil
	}
	for _, stays := range p.guards() {
		if err := stays(p.file); err != nil {
			return err
		}
	}
	_, err := os.Stat(filepath.Dir(p.file))
	return explainSave(p.file, err)
}

// guards look at what the thing would be written over.
func (p *printer) guards() []guard {
	if p.force {
		return nil
	}
	return []guard{replaceable}
}

// endings are the ends of file names that stand for the formats on offer.
func (p *printer) endings() []string {
	var out []string
	for _, format := range p.formats {
		for ending, named := range extensions {
			if named == format && ending != ".htm" {
				out = append(out, ending)
			}
		}
	}
	return out
}

// otherEnding says how to have a name that ends in something else.
func (p *printer) otherEnding() string {
	if len(p.formats) > 1 {
		return "Say what it shall be with --format."
	}
	return ""
}

// document prints a document in the format settled on.
func (p *printer) document(doc layout.Document, info sheet.Info) ([]byte, error) {
	doc.Words = func(text string) string { return quantity.Local(text, p.units) }
	switch {
	case p.large && p.wholeSheet && p.format == "pdf":
		info.Paper, doc.Enlarged = info.Paper.Twice()
	case p.large:
		doc.Enlarged = largePrint
	}
	switch p.format {
	case "pdf":
		return doc.PDF(info)
	case "html":
		return doc.HTML(info)
	case "md":
		return []byte(doc.Markdown()), nil
	}
	return []byte(doc.Text()), nil
}

// sheet is the paper to print on: that of the units when none was told.
func (p *printer) sheet(sys quantity.System) sheet.Paper {
	switch {
	case p.paper != "":
		return sheet.Paper(strings.ToLower(p.paper))
	case sys == quantity.US:
		return sheet.Letter
	}
	return sheet.A4
}

// info describes a PDF that sets its own title.
func (p *printer) info(out environment, sys quantity.System) (sheet.Info, error) {
	p.units = sys
	day, err := reportDate(p.date, out.env)
	return sheet.Info{Author: "coldreckon " + buildVersion(), Lang: sys.Language(), Date: day, Paper: p.sheet(sys)}, err
}

// print makes a document for owners of a unit system and puts it where the flags
// say.
func (p *printer) print(ctx context.Context, out environment, sys quantity.System, make func(sheet.Info) (layout.Document, error)) error {
	info, err := p.info(out, sys)
	if err != nil {
		return err
	}
	return p.write(ctx, out, func() ([]byte, error) {
		doc, err := make(info)
		if err != nil {
			return nil, err
		}
		return p.document(doc, info)
	})
}

// footOf is what stands at the foot of each page: what made it, and when.
func footOf(info sheet.Info) string { return info.Author + " · " + printedDay(info.Date) }

// write makes the thing and puts it where the flags say.
func (p *printer) write(ctx context.Context, out environment, render func() ([]byte, error)) error {
	data, err := inBackground(ctx, render)
	if err != nil {
		return err
	}
	if p.format != "pdf" && p.format != "json" {
		data = []byte(strings.Map(unseen('\n'), string(data)))
	}
	if !p.mayWait() {
		return save(p.file, marked(p.format, data), p.guards()...)
	}
	_, err = inBackground(ctx, func() (none struct{}, err error) {
		if p.toStdout() {
			return none, out.result(data)
		}
		return none, save(p.file, data)
	})
	return err
}

// mayWait reports whether writing can take as long as a reader likes, as into a
// pipe: a signal must not wait for that. A file on a disk is soon written, and
// rather whole than left behind.
func (p *printer) mayWait() bool {
	if p.toStdout() {
		return true
	}
	info, err := os.Stat(p.file)
	return err == nil && !info.Mode().IsRegular()
}
