package main

import (
	"flag"
	"fmt"
	"io"
	"os"
)

const usage = `bench build [--years 10] [--days 220] [--visits 25] [--lawns 600] [--changeovers 4]
            [--seed 1] [--open] FILE
    makes a book of that many years; with --open its last day is not closed
bench ratios [--rounds 11] [--keys 120] [--only start,keys,...] FILE
    measures a book that bench build made against an empty one, and prints all ratios as a table
`

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	if len(args) == 0 {
		return fmt.Errorf("%s", usage)
	}
	switch args[0] {
	case "build":
		return buildCommand(args[1:], out)
	case "help", "-h", "--help":
		_, err := io.WriteString(out, usage)
		return err
	}
	return more(args[0], args[1:], out)
}

// oneFile reads flags and the one file name behind them.
func oneFile(f *flag.FlagSet, args []string) (string, error) {
	f.Usage = func() { _, _ = io.WriteString(os.Stderr, usage) }
	if err := f.Parse(args); err != nil {
		return "", err
	}
	if f.NArg() != 1 {
		return "", fmt.Errorf("name one file\n%s", usage)
	}
	return f.Arg(0), nil
}
