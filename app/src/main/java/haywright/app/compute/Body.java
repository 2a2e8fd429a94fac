package haywright.app.compute;

import haywright.workings.Caution;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Problem;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** What stands around an answer, as records so that the same code writes it and gives its schema. */
final class Body {
    private Body() {}

    /** One line of workings; its inputs that were computed stand in lines above it. */
    record WorkingOut(String name, String formula, List<InputOut> inputs, double value, String unit, String source) {
        static WorkingOut of(Line line) {
            return new WorkingOut(
                    line.symbol(),
                    line.formula(),
                    line.inputs().stream().map(InputOut::of).toList(),
                    line.value(),
                    line.unit().symbol(),
                    words(line.source()));
        }
    }

    /** @param from typed in, published (and where), or worked out in a line above */
    record InputOut(String name, double value, String unit, String from) {
        static InputOut of(Input input) {
            return new InputOut(input.symbol(), input.value(), input.unit().symbol(), origin(input.origin()));
        }
    }

    record CautionOut(String words, String source) {
        static CautionOut of(Caution caution) {
            return new CautionOut(caution.words(), Body.words(caution.source()));
        }
    }

    record ErrorOut(String field, String value, String rule, String fix) {
        static ErrorOut of(Problem problem) {
            return new ErrorOut(problem.field(), problem.value(), problem.rule(), problem.fix());
        }
    }

    record ErrorsOut(List<ErrorOut> errors) {}

    private static String origin(Origin origin) {
        if (origin instanceof Origin.Published published) {
            return words(published.source());
        }
        return origin instanceof Origin.Typed typed ? typed.where() : "worked out above";
    }

    private static String words(Source source) {
        return source.cite() + " (" + source.known().words() + ")";
    }

    /** Every line once, what an input rests on before the line that uses it. */
    static List<WorkingOut> lines(List<Worked> workings) {
        var lines = new LinkedHashSet<WorkingOut>();
        var seen = new HashSet<Worked>();
        workings.forEach(worked -> add(worked, seen, lines));
        return List.copyOf(lines);
    }

    private static void add(Worked worked, Set<Worked> seen, Set<WorkingOut> lines) {
        if (!seen.add(worked)) {
            return;
        }
        var own = worked.lines();
        for (var line : own) {
            for (var input : line.inputs()) {
                if (input.origin() instanceof Origin.Computed computed) {
                    add(computed.by(), seen, lines);
                }
            }
        }
        own.forEach(line -> lines.add(WorkingOut.of(line)));
    }
}
