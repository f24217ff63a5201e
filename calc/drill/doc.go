// Package drill makes exercises: a calculator and a seed give numbers such as a job has, the question that they
// lead to, and the key, which is the calculator's own sheet. It judges what a student writes and says, where that can
// be told, which step went wrong.
//
// What a number of an exercise is ("no silly numbers"):
//   - it is between half and twice the calculator's example, and within the calculator's limits; a temperature is
//     within 10 K of it; where the example is nought it stays so;
//   - it is what somebody would read off a tape, a scale or a bag in the units of the exercise: two significant
//     figures (three in a table), or a fraction of an inch in sixteenths, or a size as the trade sells it; an example
//     in the other system's units is made such a number first, and the key is worked from the text that is printed;
//   - it is of an input that the working uses (Given);
//   - the sheet that it leads to does not say Stop, and the figure asked for is not nought and lies between a
//     twentieth and twenty times that of the example.
package drill
