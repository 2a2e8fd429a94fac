package haywright.app.exchange.lab;

import haywright.forage.Analyte;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Which analyte a bare name means, without unit, basis and method: by its spellings, turned round, or said twice. */
final class AnalyteNames {
    private static final Pattern BRACKETS = Pattern.compile("^(.*?)\\s*[(\\[]([^()\\[\\]]+)[)\\]]\\s*(.*)$");
    /** "Nitrate as N", "nitrate, % NO3" without its unit. */
    private static final Pattern FORM = Pattern.compile("nitrates?,? (?:as )?([^ ]+)");

    /** Two kinds of it are measured, by what takes it up. */
    private static final Pattern SUGAR = Pattern.compile("(?:total |soluble )?sugars?");

    private static final Pattern TWICE =
            Pattern.compile("^(.+?)(?:\\s+[-–]\\s+|\\s*/\\s*|,\\s+(?:as\\s+)?|\\s+as\\s+)(.+)$");

    private static final Map<String, String> SHORT = Map.ofEntries(
            Map.entry("cr", "crude"),
            Map.entry("maint", "maintenance"),
            Map.entry("lact", "lactation"),
            Map.entry("prot", "protein"),
            Map.entry("det", "detergent"),
            Map.entry("deterg", "detergent"),
            Map.entry("dig", "digestible"),
            Map.entry("insol", "insoluble"),
            Map.entry("sol", "soluble"),
            Map.entry("nutr", "nutrients"),
            Map.entry("carb", "carbohydrates"),
            Map.entry("phos", "phosphorus"),
            Map.entry("rel", "relative"),
            Map.entry("metab", "metabolizable"),
            Map.entry("digestibilty", "digestibility"),
            Map.entry("sugars", "sugar"),
            Map.entry("nitrates", "nitrate"));

    private static final Set<Analyte> NITRATE = EnumSet.of(Analyte.NO3, Analyte.NO3N, Analyte.KNO3);

    /** Most words begin no name, and are sooner told by this than by taking them apart. */
    private static final Set<String> FIRST_WORDS = Stream.concat(
                    Stream.of(
                            "oven",
                            "toluene",
                            "corrected",
                            "adin",
                            "ndin",
                            "ttndfd",
                            "ivndfd",
                            "dndf",
                            "ivtdmd",
                            "undfom",
                            "ndfd",
                            "ivtd",
                            "undf"),
                    Arrays.stream(Analyte.values())
                            .flatMap(a -> Stream.concat(Stream.of(a.id(), a.words()), a.synonyms().stream())))
            .map(AnalyteNames::firstWord)
            .collect(Collectors.toSet());

    private AnalyteNames() {}

    /** Whether a name that is known can begin with this word. */
    static boolean canBegin(String word) {
        return FIRST_WORDS.contains(firstWord(word));
    }

    /** Likewise, of a word that may be cut short. */
    static boolean canPerhapsBegin(String word) {
        var first = firstWord(word);
        return first.length() < 2 || FIRST_WORDS.contains(first);
    }

    private static String firstWord(String name) {
        var bare =
                Label.PERCENT_FIRST.matcher(Heading.key(name)).replaceFirst("").replaceFirst("^[^\\p{L}]+", "");
        var first = bare.split("[^\\p{L}\\p{N}]", 2)[0]
                .replace("fibre", "fiber")
                .replace("isable", "izable")
                .replace("sulph", "sulf");
        // uNDF240 and NDFD30 begin as uNDF and NDFD do
        return SHORT.getOrDefault(
                first,
                first.replaceFirst("^(a?ndf|undf|adf)([0-9]{2,3})?om$", "$1")
                        .replaceFirst("^(\\p{L}{4,})[0-9]{2,3}$", "$1"));
    }

    /** The analyte of a bare name; a name that says it twice must say the same twice. */
    static Optional<Analyte> of(String text) {
        var name = text.strip();
        var known = Analyte.find(name)
                .or(() -> Analyte.find(name.replace(",", "")))
                .or(() -> Analyte.find(
                        name.replaceFirst("^([\\p{L} ]+),\\s*([\\p{L} ]+)$", "$2 $1"))) // "protein, soluble"
                .or(() -> Analyte.find(spelled(name)))
                .or(() -> Analyte.find(spelled(name.replaceFirst("^([\\p{L} .]+),\\s*([\\p{L} .]+)$", "$2 $1"))));
        if (known.isPresent() || name.isEmpty()) {
            return known;
        }
        var brackets = BRACKETS.matcher(name);
        if (brackets.matches()
                && brackets.group(3).isEmpty()
                && SUGAR.matcher(brackets.group(1)).matches()) {
            var kind = of(brackets.group(2));
            return kind.filter(one -> one == Analyte.WSC || one == Analyte.ESC);
        }
        boolean isNitrate = brackets.matches() && brackets.group(1).matches("nitrates?");
        if (isNitrate
                && brackets.group(2).matches("(?:as )?n")
                && brackets.group(3).isEmpty()) {
            return Optional.of(Analyte.NO3N);
        }
        if (brackets.matches()) {
            return same(
                    of((brackets.group(1) + " " + brackets.group(3)).strip()),
                    of(brackets.group(2).replaceFirst("^as ", "")));
        }
        if (name.matches("sugars? (?:wsc|esc)")) {
            return of(name.replaceFirst(".* ", ""));
        }
        var form = FORM.matcher(name);
        if (form.matches()) {
            return same(
                    Optional.of(Analyte.NO3),
                    form.group(1).equals("n") ? Optional.of(Analyte.NO3N) : Analyte.find(form.group(1)));
        }
        var twice = TWICE.matcher(name);
        return twice.matches() ? same(of(twice.group(1)), of(twice.group(2))) : Optional.empty();
    }

    private static String spelled(String name) {
        return Arrays.stream(name.replaceAll("[.,]", " ").strip().split("\\s+"))
                .map(word -> SHORT.getOrDefault(word, word))
                .collect(Collectors.joining(" "));
    }

    /** "Nitrate" is a word for all its forms, and the form beside it tells which. */
    private static Optional<Analyte> same(Optional<Analyte> first, Optional<Analyte> second) {
        if (first.isEmpty() || second.isEmpty()) {
            return Optional.empty();
        }
        boolean isForm = first.get() == Analyte.NO3 && NITRATE.contains(second.get());
        return first.equals(second) || isForm ? second : Optional.empty();
    }
}
