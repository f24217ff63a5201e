package calctest

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
)

// Eval works out an expression of a step as a pocket calculator would: Go's
// syntax, angles in degrees.
func Eval(expr string, values map[string]float64) (float64, error) {
	tree, err := parser.ParseExpr(expr)
	if err != nil {
		return 0, fmt.Errorf("expression %q: %w", expr, err)
	}
	return eval(tree, values)
}

func eval(e ast.Expr, values map[string]float64) (float64, error) {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return eval(e.X, values)
	case *ast.BasicLit:
		return strconv.ParseFloat(e.Value, 64)
	case *ast.Ident:
		if v, ok := values[e.Name]; ok {
			return v, nil
		}
		if e.Name == "pi" {
			return math.Pi, nil
		}
		return 0, fmt.Errorf("the symbol %q is not among the terms of the step", e.Name)
	case *ast.UnaryExpr:
		x, err := eval(e.X, values)
		if e.Op == token.SUB {
			x = -x
		}
		return x, err
	case *ast.BinaryExpr:
		x, err := eval(e.X, values)
		if err != nil {
			return 0, err
		}
		y, err := eval(e.Y, values)
		if err != nil {
			return 0, err
		}
		return binary(e.Op, x, y)
	case *ast.CallExpr:
		return call(e, values)
	}
	return 0, fmt.Errorf("an expression of a step cannot hold %T", e)
}

func binary(op token.Token, x, y float64) (float64, error) {
	switch op {
	case token.ADD:
		return x + y, nil
	case token.SUB:
		return x - y, nil
	case token.MUL:
		return x * y, nil
	case token.QUO:
		return x / y, nil
	}
	return 0, fmt.Errorf("an expression of a step cannot hold %v", op)
}

const degree = math.Pi / 180

func call(e *ast.CallExpr, values map[string]float64) (float64, error) {
	name, ok := e.Fun.(*ast.Ident)
	if !ok {
		return 0, fmt.Errorf("an expression of a step cannot call %T", e.Fun)
	}
	var args []float64
	for _, a := range e.Args {
		x, err := eval(a, values)
		if err != nil {
			return 0, err
		}
		args = append(args, x)
	}
	if one, ok := ofOne[name.Name]; ok && len(args) == 1 {
		return one(args[0]), nil
	}
	if two, ok := ofTwo[name.Name]; ok && len(args) == 2 {
		return two(args[0], args[1]), nil
	}
	return 0, fmt.Errorf("no function %s of %d arguments", name.Name, len(args))
}

var ofOne = map[string]func(float64) float64{
	"sin": func(x float64) float64 { return math.Sin(x * degree) }, "cos": func(x float64) float64 { return math.Cos(x * degree) },
	"tan": func(x float64) float64 { return math.Tan(x * degree) }, "asin": func(x float64) float64 { return math.Asin(x) / degree },
	"acos": func(x float64) float64 { return math.Acos(x) / degree }, "atan": func(x float64) float64 { return math.Atan(x) / degree },
	"sqrt": math.Sqrt, "exp": math.Exp, "ln": math.Log, "log": math.Log10, "abs": math.Abs, "ceil": math.Ceil, "floor": math.Floor, "cbrt": math.Cbrt,
}

var ofTwo = map[string]func(x, y float64) float64{"pow": math.Pow, "min": math.Min, "max": math.Max}
