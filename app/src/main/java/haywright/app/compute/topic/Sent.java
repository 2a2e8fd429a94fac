package haywright.app.compute.topic;

import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;

/** Leads a refusal of the engine back to the component of the request that its figure came from. */
final class Sent {
    private Sent() {}

    /** @param names the request's component for each field of the engine that is named otherwise */
    static <T> T as(Map<String, String> names, Supplier<T> build) {
        return renamed(field -> names.getOrDefault(field, field), build);
    }

    /** @param place a component that is a record, in which the figures stand */
    static <T> T in(String place, Supplier<T> build) {
        return renamed(field -> place + "." + field, build);
    }

    /** @param place a component that is a list of records */
    static <A, B> List<B> each(String place, List<A> list, Function<A, B> build) {
        var built = new ArrayList<B>();
        for (int i = 0; i < list.size(); i++) {
            var one = list.get(i);
            built.add(in(place + "[" + i + "]", () -> build.apply(one)));
        }
        return built;
    }

    /** @throws Refused unless the figure is above 0 */
    static void aboveNothing(List<Problem> problems, String field, double value, String rule) {
        if (!(value > 0)) {
            problems.add(new Problem(field, String.valueOf(value), rule, "Check the figure."));
        }
    }

    private static <T> T renamed(UnaryOperator<String> name, Supplier<T> build) {
        try {
            return build.get();
        } catch (Refused refused) {
            throw new Refused(refused.problems().stream()
                    .map(p -> new Problem(name.apply(p.field()), p.value(), p.rule(), p.fix()))
                    .toList());
        }
    }
}
