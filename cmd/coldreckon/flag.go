package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"coldreckon/economics/quantity"
)

// flagFault words what is wrong with a command's flags.
func flagFault(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var value *pflag.InvalidValueError
	var syntax *pflag.InvalidSyntaxError
	wrong, hint := err.Error(), helpHint(cmd)
	switch {
	case errors.As(err, &unknown) && unknown.GetSpecifiedShortnames() != "":
		wrong = fmt.Sprintf("there is no flag %q", "-"+unknown.GetSpecifiedShortnames())
	case errors.As(err, &unknown):
		name := unknown.GetSpecifiedName()
		wrong = fmt.Sprintf("there is no flag %q", "--"+name)
		if near := nearFlag(cmd, name); near != "" {
			hint = fmt.Sprintf("Did you mean --%s?", near)
		}
	case errors.As(err, &bare):
		wrong = fmt.Sprintf("--%s has nothing after it. Give %s.", bare.GetFlag().Name, valueOf(bare.GetFlag()))
	case errors.As(err, &value):
		wrong = fmt.Sprintf("--%s cannot be %q. Give %s.", value.GetFlag().Name, value.GetValue(), valueOf(value.GetFlag()))
	case errors.As(err, &syntax):
		wrong = fmt.Sprintf("%q is no flag. Write --NAME or --NAME=VALUE.", syntax.GetSpecifiedFlag())
	}
	return misuse(hint, "%s: %s", cmd.CommandPath(), wrong)
}

// valueOf names what a flag takes.
func valueOf(f *pflag.Flag) string {
	switch f.Value.Type() {
	case "int", "uint64":
		return "a whole number, not below 0, of at most 18 digits"
	case "bool":
		return "true or false"
	case fileType:
		return "the name of a file"
	}
	return "a value"
}

// A fileName is the value of a flag that names a file: never an empty one, as a
// script passes whose variable was not set.
type fileName string

const fileType = "file"

func (f *fileName) String() string { return string(*f) }
func (f *fileName) Type() string   { return fileType }
func (f *fileName) Set(name string) error {
	if name == "" {
		return errors.New("an empty name")
	}
	*f = fileName(name)
	return nil
}

// nearFlag gives the command's flag that most resembles a misspelt one, or "".
func nearFlag(cmd *cobra.Command, name string) (near string) {
	if len(name) > 100 {
		return ""
	}
	least := len(name)/3 + 2
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		if d := quantity.Distance(f.Name, name); d < least && !f.Hidden {
			near, least = f.Name, d
		}
	})
	return near
}
