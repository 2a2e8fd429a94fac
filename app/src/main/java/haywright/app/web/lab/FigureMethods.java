package haywright.app.web.lab;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.forage.Analyte;
import haywright.forage.lab.Tested.Method;
import haywright.workings.Refused;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Figures that a sheet says were measured another way than the rest of it: fiber by NIR, minerals by wet chemistry. In
 * the form they are two lists of names, in a document each is a word on the figure itself.
 */
public final class FigureMethods {
    public static final Ask WET = Ask.text(
            "wetFigures",
            "By wet chemistry",
            "For example: Ca, P, Mg, K, NO3. “Minerals” means all minerals typed below.");
    public static final Ask NIR = Ask.text("nirFigures", "By near infrared (NIR)", "For example: CP, ADF, NDF.");

    private static final String MINERALS = "minerals";
    /** More names than there are figures to name. */
    private static final int MOST_NAMES = 200;

    private FigureMethods() {}

    /** Whether the form says anything about single figures. */
    public static boolean areSaid(Form form) {
        return !form.isEmpty(WET)
                || !form.isEmpty(NIR)
                || !form.problem(WET).isEmpty()
                || !form.problem(NIR).isEmpty();
    }

    /** Writes into a form which figures were measured another way than the rest. */
    static void show(Map<String, String> known, Map<Analyte, Method> methods) {
        known.put(WET.name(), names(methods, Method.WET));
        known.put(NIR.name(), names(methods, Method.NIR));
    }

    static void show(Map<String, String> known, Printed printed) {
        var methods = new EnumMap<Analyte, Method>(Analyte.class);
        printed.readings().forEach(r -> note(methods, r.analyte(), r.method()));
        printed.notMeasured().forEach(n -> note(methods, n.analyte(), n.method()));
        show(known, methods);
    }

    private static void note(Map<Analyte, Method> methods, Analyte analyte, @Nullable Method own) {
        if (own != null) {
            methods.put(analyte, own);
        }
    }

    /** Behind a figure: ", by wet chemistry"; empty where it was measured as the whole report was. */
    static String words(@Nullable Method own) {
        return own == null ? "" : ", by " + ReportForm.words(own);
    }

    private static String names(Map<Analyte, Method> methods, Method method) {
        return methods.entrySet().stream()
                .filter(e -> e.getValue() == method)
                .map(e -> name(e.getKey()))
                .collect(Collectors.joining(", "));
    }

    /** Short and read back as the same analyte. */
    private static String name(Analyte analyte) {
        var id = analyte.id().toUpperCase(Locale.ROOT);
        return Analyte.find(id).filter(a -> a == analyte).isPresent() ? id : analyte.words();
    }

    /** The figures, each with its method where the form names it. A name that no figure goes with is refused. */
    static Printed read(Form form, Printed typed) {
        var has = EnumSet.noneOf(Analyte.class);
        typed.readings().forEach(r -> has.add(r.analyte()));
        typed.notMeasured().forEach(n -> has.add(n.analyte()));
        var methods = new EnumMap<Analyte, Method>(Analyte.class);
        name(form, WET, Method.WET, has, methods);
        name(form, NIR, Method.NIR, has, methods);
        return new Printed(
                typed.readings().stream()
                        .map(r -> r.by(methods.get(r.analyte())))
                        .toList(),
                typed.notMeasured().stream()
                        .map(n -> n.by(methods.get(n.analyte())))
                        .toList());
    }

    private static void name(Form form, Ask ask, Method method, Set<Analyte> has, Map<Analyte, Method> into) {
        var names = form.text(ask).split("[,;]", -1);
        if (names.length > MOST_NAMES) {
            form.refuse(
                    ask.name(),
                    form.value(ask),
                    "these are %,d names; no report has so many figures".formatted(names.length),
                    "Leave the names of figures that are typed below.");
            return;
        }
        for (var written : names) {
            var name = written.strip();
            if (name.isEmpty()) {
                continue;
            }
            var analytes = named(form, ask, name);
            var typed = analytes.stream().filter(has::contains).toList();
            if (typed.isEmpty() && !analytes.isEmpty()) {
                form.refuse(
                        ask.name(),
                        name,
                        "no figure of it is typed below",
                        "Type its figure, or delete the name here.");
            }
            for (var analyte : typed) {
                var other = into.putIfAbsent(analyte, method);
                if (other != null && other != method) {
                    form.refuse(ask.name(), name, "it is in both lists", "Leave it in one of them.");
                }
            }
        }
    }

    private static Set<Analyte> named(Form form, Ask ask, String name) {
        if (name.equalsIgnoreCase(MINERALS)) {
            return EnumSet.range(Analyte.CA, Analyte.AL);
        }
        try {
            return EnumSet.of(Analyte.named(name));
        } catch (Refused e) {
            var problem = e.problems().get(0);
            form.refuse(ask.name(), name, problem.rule(), problem.fix());
            return Set.of();
        }
    }
}
