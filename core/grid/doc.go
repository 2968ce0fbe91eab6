// Package grid sets grasses against products: grasses down, products across, a letter and a word in each cell, and
// for each cell the ground on which it stands. It only arranges what check, label entry and reference say.
package grid
