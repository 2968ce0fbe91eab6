package main

import (
	"slices"
	"sort"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core/reckon"
)

func (a *app) reckonCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "reckon KIND --input VALUE ...",
		Short: "Arithmetic without a book",
		Long:  reckonHelp(reckon.Kinds()),
		Example: `  tintline reckon convert --gal-per-acre 65.34
  tintline reckon area --shape oval --length-ft 120 --width-ft 80
  tintline reckon load --rate-fl-oz-per-acre 32 --gal-per-1000-sqft 1.5 --tank-gal 200 --json
  tintline reckon active --lb-ai-per-gal 4 --lb-ai-per-acre 1
  tintline reckon strength --percent-vv 6 --mix-gal 1
  tintline reckon nitrogen --n-lb-per-1000-sqft 1 --percent-n 28 --area-sqft 6000
  tintline reckon catch --seconds 77,79,78 --swath-ft 5 --course-ft 200 --collected-gal 5.25
  tintline reckon speed --speed-mph 3 --course-ft 100,200,300
  tintline reckon nozzle --pressure1-psi 40 --flow1-gal-per-min 0.4 --pressure2-psi 30
  tintline reckon pace --width-ft 10 --speed-mph 5 --field-efficiency-pct 63
  tintline reckon learn --prior-gal 1.15 --prior-sd-gal 0.11 --flow-gpm 3 --flow-rel-sd 0.03 --time-s 24.6 --time-sd-s 1
  tintline reckon changeover --inside-diameter-in 0.375 --length-ft 200 --flow-gpm 3 --dead-volume-gal 0.2 --stop-at-new-fraction 0.99
  tintline reckon pressure --inside-diameter-in 0.5 --length-ft 300 --flow-gpm 3 --hose-factor 1.15
  tintline reckon gauge --shape obround --width-in 27 --height-in 44 --length-in 60 --depth-in 40
  tintline reckon levelling --plan-area1-ft2 6 --plan-area2-ft2 4 --dh0-in 12 --pipe-id-in 1.25 --pipe-length-ft 6 --k-sum 7.3
  tintline reckon topup --left-gal 30 --left-fl-oz-per-gal 2 --target-fl-oz-per-gal 2 --target-gal 100 --capacity-gal 150
  tintline reckon dilute --stock-ml 300 --stock-pct 70 --target-pct 40
  tintline reckon stretch --left-gal 12 --fl-oz-per-gal 2 --rate-low-fl-oz-per-1000-sqft 2.5 --gal-per-1000-sqft 1.5
  tintline reckon blend --va-gal 60 --vb-gal 30 --ca-oz-gal 0.5 --cb-oz-gal 1
  tintline reckon rinse --residual-gal 0.5 --rinse-total-gal 6 --rinses 3`,
		// The inputs are flags of their own kind: a quantity and a unit in any combination.
		DisableFlagParsing: true,
		RunE: func(cmd *cobra.Command, args []string) error {
			kind, given, help, err := a.reckonArgs(args)
			if err != nil {
				return err
			}
			if help {
				if slices.Contains(reckon.Kinds(), kind) {
					helpOn(cmd, kind)
				}
				return cmd.Help()
			}
			if err := a.settle(); err != nil {
				return err
			}
			return a.reckon(kind, given)
		},
	}
}

// helpOn leaves of the help what one kind needs.
func helpOn(cmd *cobra.Command, kind string) {
	cmd.Long = reckonHelp([]string{kind})
	var examples []string
	for _, line := range strings.Split(cmd.Example, "\n") {
		if strings.HasPrefix(strings.TrimSpace(line), "tintline reckon "+kind+" ") {
			examples = append(examples, line)
		}
	}
	cmd.Example = strings.Join(examples, "\n")
}

// reckonHelp lists kinds with the inputs that help names.
func reckonHelp(kinds []string) string {
	var w strings.Builder
	w.WriteString("Works out every figure that the inputs determine. An input is a quantity and a unit; each quantity is\n" +
		"taken and answered in every unit of its kind. Lists are given with commas.\n\nKinds and inputs:\n")
	for _, kind := range kinds {
		w.WriteString("  " + kind + ":")
		for _, in := range reckon.Inputs(kind) {
			w.WriteString(" --" + strings.ReplaceAll(in, "_", "-"))
		}
		w.WriteString("\n")
	}
	return strings.TrimRight(w.String(), "\n")
}

// reckonArgs parts the kind, the inputs and the flags for all commands.
func (a *app) reckonArgs(args []string) (kind string, given map[string]string, help bool, err error) {
	given = map[string]string{}
	for i := 0; i < len(args); i++ {
		name, flag := strings.CutPrefix(args[i], "--")
		if !flag {
			switch {
			case args[i] == "-h":
				return kind, nil, true, nil
			case strings.HasPrefix(args[i], "-"):
				return "", nil, false, usage("reckon takes no %q; an input is a flag such as --tank-gal 200.", args[i])
			case kind != "":
				return "", nil, false, usage("reckon takes one kind, not %q and %q.", kind, args[i])
			}
			kind = args[i]
			continue
		}
		name, value, has := strings.Cut(name, "=")
		switch name {
		case "help":
			return kind, nil, true, nil
		case "json", "no-mouse":
			on := !has || value != "false"
			if name == "json" {
				a.flags.json = on
			}
			continue
		}
		if !has {
			if i++; i == len(args) {
				return "", nil, false, usage("--%s has no value.", name)
			}
			value = args[i]
		}
		if err := a.reckonFlag(given, name, value); err != nil {
			return "", nil, false, err
		}
	}
	return kind, given, false, nil
}

// reckonFlag takes a flag for all commands, or else an input.
func (a *app) reckonFlag(given map[string]string, name, value string) error {
	switch name {
	case "book":
		a.flags.book = value
	case "at":
		a.flags.at = value
	case "colour":
		a.flags.colour = value
	default:
		key := strings.ReplaceAll(name, "-", "_")
		if _, twice := given[key]; twice {
			return usage("--%s is given twice.", name)
		}
		given[key] = value
	}
	return nil
}

func (a *app) reckon(kind string, given map[string]string) error {
	if kind == "" {
		f := usage("reckon needs a kind.")
		f.do = "Use one of: " + strings.Join(reckon.Kinds(), ", ") + "."
		return f
	}
	answer, err := reckon.Do(kind, given)
	if err != nil {
		return err
	}
	if a.flags.json {
		return a.printJSON(answer)
	}
	var lines []string
	for key, v := range answer {
		if key == reckon.Working || v == nil {
			continue
		}
		lines = append(lines, key+" "+answerText(v)+"\n")
	}
	sort.Strings(lines)
	how, _ := answer[reckon.Working].([]string)
	if len(how) > 0 {
		lines = append(lines, "\n"+strings.Join(how, "\n")+"\n")
	}
	return a.print(strings.Join(lines, ""))
}

// answerText prints a figure with ten digits.
func answerText(v any) string {
	switch v := v.(type) {
	case float64:
		return strconv.FormatFloat(v, 'g', 10, 64)
	case bool:
		return strconv.FormatBool(v)
	case string:
		return v
	}
	return "?"
}
