package main

import (
	"bytes"
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"coldreckon/report/words"
	"coldreckon/wizard/answers"
)

// sampleCommand lists the built-in boats, or prints the answers file of one.
func sampleCommand(out environment) *cobra.Command {
	return &cobra.Command{
		Use:   "sample [NAME]",
		Short: "List the built-in boats, or print the answers file of one",
		Long: `Lists the invented boats that come with the program, one a line, the name
first. With a NAME it prints that boat's answers file: a start for your own.`,
		Example: `  coldreckon sample
  coldreckon sample dunlin > boat.yaml`,
		Args: arguments(0, 1, "the name of at most one sample"),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return out.result(sampleList(answers.Samples()))
			}
			s, err := sampleNamed(args[0])
			if err != nil {
				return err
			}
			return out.result([]byte(s.Text))
		},
		ValidArgsFunction: completeFirst(sampleNames),
	}
}

// sampleList is one line a sample.
func sampleList(samples []answers.Sample) []byte {
	var b bytes.Buffer
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, s := range samples {
		fmt.Fprintf(w, "%s\t%s\n", s.Name, s.Summary)
	}
	w.Flush()
	return b.Bytes()
}

// sampleNamed finds a sample, with or without the prefix.
func sampleNamed(name string) (answers.Sample, error) {
	s, ok := answers.SampleNamed(strings.TrimPrefix(name, samplePrefix))
	if !ok {
		return answers.Sample{}, misuse("'coldreckon sample' tells what they are.",
			"sample: there is no %q. Give %s.", name, words.Either(sampleNames()))
	}
	return s, nil
}

func sampleNames() []string {
	var names []string
	for _, s := range answers.Samples() {
		names = append(names, s.Name)
	}
	return names
}
