// Command bench builds books of many years through the real entries, and prints how the program compares with
// an empty book, with the bare system and with an SQL engine over the same rows. Nothing judges a time: the
// table is read by people.
package main
