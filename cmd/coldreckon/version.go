package main

import (
	"bytes"
	"fmt"
	"runtime"
	"runtime/debug"

	"github.com/spf13/cobra"

	"coldreckon/rules"
)

// versionCommand prints what this build is made of.
func versionCommand(out environment) *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "Print the build and the rule book it holds",
		Example: `  coldreckon version`,
		Args:    arguments(0, 0, "nothing more"),
		RunE:    func(*cobra.Command, []string) error { return printVersion(out) },
	}
}

func printVersion(out environment) error {
	pack, err := rules.Load()
	if err != nil {
		return err
	}
	info, _ := debug.ReadBuildInfo()
	return out.result(versionText(info, pack.Book.Identity))
}

// versionText describes a build. The tool chain stamps the revision into a
// build from a repository; info may be nil.
func versionText(info *debug.BuildInfo, bookIdentity string) []byte {
	settings := map[string]string{}
	if info != nil {
		for _, s := range info.Settings {
			settings[s.Key] = s.Value
		}
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "coldreckon %s\n", versionOf(info))
	if revision := settings["vcs.revision"]; revision != "" {
		fmt.Fprintf(&b, "revision %s, %s", revision, settings["vcs.time"])
		if settings["vcs.modified"] == "true" {
			b.WriteString(", with changes")
		}
		b.WriteByte('\n')
	}
	fmt.Fprintf(&b, "built with %s for %s/%s\nrule book %s\n", runtime.Version(), runtime.GOOS, runtime.GOARCH, bookIdentity)
	return b.Bytes()
}

// versionOf is the release that the tool chain took from the repository's tag.
func versionOf(info *debug.BuildInfo) string {
	if info == nil || info.Main.Version == "" {
		return "(devel)"
	}
	return info.Main.Version
}

// buildVersion is the version of the running program.
func buildVersion() string {
	info, _ := debug.ReadBuildInfo()
	return versionOf(info)
}
