// Package label keeps what may go on which grass: the grasses, and the operator's label entry of a product.
// It takes values and answers with values; it knows no book. The label in the operator's hand decides;
// nothing here replaces it.
package label
