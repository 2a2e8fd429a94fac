package haywright;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Worked;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/**
 * Evaluates the text of every formula again from the inputs shown beside it, so that the words cannot drift from the
 * code. Grammar: {@code + − · / ^}, brackets, {@code exp ln sqrt min max abs}; ASCII {@code - *} are read too.
 */
public final class FormulaCheck {
    private static final Set<String> FUNCTIONS = Set.of("exp", "ln", "sqrt", "min", "max", "abs");
    private static final double SAME = 1e-9;

    private FormulaCheck() {}

    /** Every line of {@code worked}, and of everything it was computed from, gives its own number again. */
    public static void reEvaluates(Worked worked) {
        var known = new HashMap<String, Double>();
        var lines = worked.lines();
        assertThat(lines)
                .as("workings of %s", worked.getClass().getSimpleName())
                .isNotEmpty();
        for (Line line : lines) {
            var symbols = new HashMap<>(known);
            for (var input : line.inputs()) {
                symbols.put(input.symbol(), input.value());
                if (input.origin() instanceof Origin.Computed computed) {
                    reEvaluates(computed.by());
                }
            }
            double again = evaluate(line.formula(), symbols);
            double slack = SAME * Math.max(1, Math.abs(line.value()));
            assertThat(Math.abs(again - line.value()))
                    .as("%s: %s = %s gives %s with %s", line.symbol(), line.formula(), line.value(), again, symbols)
                    .isLessThanOrEqualTo(slack);
            known.put(line.symbol(), line.value());
        }
    }

    public static double evaluate(String formula, Map<String, Double> symbols) {
        var reader = new Reader(formula.replace('−', '-').replace('·', '*').replace('×', '*'), symbols);
        double value = reader.sum();
        reader.skip();
        if (reader.at < reader.text.length()) {
            throw new AssertionError(
                    "cannot read \"" + formula + "\" from \"" + reader.text.substring(reader.at) + "\"");
        }
        return value;
    }

    private static final class Reader {
        private final String text;
        private final Map<String, Double> symbols;
        private int at;

        Reader(String text, Map<String, Double> symbols) {
            this.text = text;
            this.symbols = symbols;
        }

        void skip() {
            while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
                at++;
            }
        }

        boolean take(char c) {
            skip();
            if (at < text.length() && text.charAt(at) == c) {
                at++;
                return true;
            }
            return false;
        }

        double sum() {
            double value = product();
            while (true) {
                if (take('+')) {
                    value += product();
                } else if (take('-')) {
                    value -= product();
                } else {
                    return value;
                }
            }
        }

        double product() {
            double value = signed();
            while (true) {
                if (take('*')) {
                    value *= signed();
                } else if (take('/')) {
                    value /= signed();
                } else {
                    return value;
                }
            }
        }

        double signed() {
            if (take('-')) {
                return -signed();
            }
            return power();
        }

        double power() {
            double base = atom();
            return take('^') ? Math.pow(base, signed()) : base;
        }

        double atom() {
            if (take('(')) {
                double value = sum();
                expect(')');
                return value;
            }
            skip();
            int from = at;
            if (at < text.length() && (Character.isDigit(text.charAt(at)) || text.charAt(at) == '.')) {
                while (at < text.length() && (Character.isDigit(text.charAt(at)) || text.charAt(at) == '.')) {
                    at++;
                }
                return Double.parseDouble(text.substring(from, at));
            }
            while (at < text.length() && (Character.isLetterOrDigit(text.charAt(at)) || text.charAt(at) == '_')) {
                at++;
            }
            var name = text.substring(from, at);
            if (FUNCTIONS.contains(name)) {
                expect('(');
                double first = sum();
                double value = switch (name) {
                    case "exp" -> Math.exp(first);
                    case "ln" -> Math.log(first);
                    case "sqrt" -> Math.sqrt(first);
                    case "abs" -> Math.abs(first);
                    default -> {
                        expect(',');
                        double second = sum();
                        yield name.equals("min") ? Math.min(first, second) : Math.max(first, second);
                    }
                };
                expect(')');
                return value;
            }
            var value = symbols.get(name);
            if (value == null) {
                throw new AssertionError(
                        "\"" + text + "\" needs \"" + name + "\", and only " + symbols.keySet() + " are shown");
            }
            return value;
        }

        void expect(char c) {
            if (!take(c)) {
                throw new AssertionError("\"" + text + "\" lacks a " + c + " at " + at);
            }
        }
    }
}
