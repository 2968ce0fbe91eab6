// Package hydraulics is the physics of hoses and of what stands before them: how much a hose holds and how well its
// bore is known, whether its flow is turbulent, how far one liquid smears into the next, how new the outlet is after so
// much has been pushed, and what pressure a flow costs.
//
// It is pure and knows nothing of a truck, a book or a label: numbers in, numbers out. Every formula names its author
// and year. Limits, margins and tables stand in CSV files, each row with its source; constants.csv holds the single
// figures. No margin is applied here unless the caller hands it in.
//
// Inside, all is reckoned in metres, seconds, kilograms and pascals as float64; Gallons is the volume of the answers,
// since they are estimates and nothing here is booked.
package hydraulics
