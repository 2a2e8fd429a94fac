package haywright.app.exchange.lab;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What the sentences of a sheet say of the basis of some figures alone: "all as received except fiber, which is on dry
 * matter", "minerals are on dry matter", "protein as fed". What is taken out of the basis of the others without one of
 * its own is asked, and where nobody can tell what is taken out, all is.
 */
public final class BasisExcept {
    private static final int LONGEST_NAME = 4;
    private static final int LONGEST_LINE = 400;

    private static final Set<Analyte> FIBER =
            EnumSet.of(Analyte.ADF, Analyte.NDF, Analyte.CF, Analyte.LIGNIN, Analyte.UNDF);
    private static final Set<Analyte> MINERALS = EnumSet.range(Analyte.CA, Analyte.AL);
    private static final Set<Analyte> ENERGY = EnumSet.range(Analyte.TDN, Analyte.DE);
    private static final Set<Analyte> PROTEIN = EnumSet.of(Analyte.CP, Analyte.N, Analyte.ACP);
    private static final Set<Analyte> NITRATE = EnumSet.of(Analyte.NO3, Analyte.NO3N, Analyte.KNO3);
    private static final Set<Analyte> SUGARS =
            EnumSet.of(Analyte.STARCH, Analyte.WSC, Analyte.ESC, Analyte.NFC, Analyte.NSC);
    private static final Set<Analyte> ACIDS =
            EnumSet.of(Analyte.LACTIC, Analyte.ACETIC, Analyte.PROPIONIC, Analyte.BUTYRIC, Analyte.ETHANOL);

    private static final List<Map.Entry<Pattern, Set<Analyte>>> GROUPS = List.of(
            group("fib(?:er|re)s?(?: fractions?)?", FIBER),
            group("(?:(?:macro|micro|trace|major)[- ]?)?(?:minerals?|elements?)", MINERALS),
            group("energ(?:y|ies)(?: (?:values?|figures?))?|net energ(?:y|ies)", ENERGY),
            group("(?:crude )?proteins?", PROTEIN),
            group("nitrates?", NITRATE),
            group("sugars?|carbohydrates?|sugars? and starch", SUGARS),
            group("(?:fermentation |volatile )?acids|fermentation", ACIDS));

    private static final Pattern BASIS = Pattern.compile(
            "(?i)(?<![\\p{L}\\p{N}-])(?:(as[- ](?:received|rec['’]?d|fed|is|sampled|delivered)|wet(?: basis| weight)?|fresh(?: basis| matter| weight)?)"
                    + "|((?:100 ?% )?dry(?:[- ](?:matter|weight|basis))?|dm)|(90 ?% (?:dry matter|dm|dry)))(?: basis)?(?![\\p{L}\\p{N}])");

    private static final Pattern TAKES_OUT = Pattern.compile(
            "(?i)(?<!\\p{L})(?:except(?:ing|ions?)?(?: (?:for|of|are))?|excluding|other than|apart from|save|but(?: for)?|not|without)(?!\\p{L})");
    private static final Pattern VAGUE = Pattern.compile(
            "(?i)(?<!\\p{L})(?:some|certain|several|a few|the last|the first|the starred|the bold)(?!\\p{L})");

    /** What may stand between what is taken out and the end without being a name of anything on the sheet. */
    private static final Pattern NO_NAME = Pattern.compile(
            "(?i)(?:noted|otherwise|stated|indicated|marked|shown|specified|given|said|where|as|it|is|are|in|on|an?|the|of|for|and|or|below|above|footnotes?|notes?|moisture|dry|matter|dm|ph|rfv|rfq|those|which|with|itself|they|values?|results?|figures?|basis|all|both|unless|to|by|so|its|own|line|when|if|has|have|none|one|whatever)");

    private final Map<Analyte, Basis> told = new EnumMap<>(Analyte.class);
    private final Set<Analyte> twice = EnumSet.noneOf(Analyte.class);
    private final Set<Analyte> open = EnumSet.noneOf(Analyte.class);
    private boolean isAllOpen;

    private record Place(int from, int to, Set<Analyte> analytes) {}

    private static Map.Entry<Pattern, Set<Analyte>> group(String words, Set<Analyte> analytes) {
        return Map.entry(Pattern.compile("(?i)" + words), analytes);
    }

    /** @param lines of the sheet, as they came */
    public static BasisExcept in(List<String> lines) {
        var found = new BasisExcept();
        for (var line : lines) {
            if (line.length() > LONGEST_LINE || !BASIS.matcher(line).find()) {
                continue;
            }
            for (var cell : line.strip().split("\\s{2,}|\\t|[|│]")) {
                boolean isName = !cell.equals(line.strip()) && Heading.of(cell).isPresent();
                if (!isName) {
                    sentences(cell).forEach(found::sentence);
                }
            }
        }
        found.twice.forEach(found.told::remove);
        found.open.removeAll(found.told.keySet());
        return found;
    }

    private static List<String> sentences(String text) {
        var all = new ArrayList<String>();
        for (var one : text.split("[.;](?=\\s|$)")) {
            boolean hasFigure = one.replaceAll("(?i)(?:100|90) ?%|no ?3", "").matches(".*[0-9].*");
            if (!hasFigure && !one.isBlank()) {
                all.add(one.strip());
            }
        }
        return all;
    }

    private void sentence(String text) {
        if (HalfDry.isIn(text)) {
            open.addAll(subjects(text));
            return;
        }
        var bases = BASIS.matcher(text);
        int from = 0;
        var open = Optional.<Basis>empty();
        while (bases.find()) {
            var between = text.substring(from, bases.start());
            var basis = bases.group(1) != null
                    ? Basis.AS_RECEIVED
                    : bases.group(2) != null ? Basis.DRY_MATTER : Basis.NINETY_PCT;
            var subjects = subjects(between);
            subjects.forEach(analyte -> tell(analyte, basis));
            if (subjects.isEmpty() && VAGUE.matcher(between).find()) {
                isAllOpen = true;
            }
            boolean isFirst = from == 0
                    && between.replaceAll("(?i)[^\\p{L}]|on|an?|in", "").isEmpty();
            from = bases.end();
            var rest = text.substring(from);
            if (isFirst
                    && rest.matches("(?i)\\s*(?::|for|of|=|-|–)\\s+\\S.*")
                    && !BASIS.matcher(rest).find()) {
                subjects(rest).forEach(analyte -> tell(analyte, basis)); // "Dry matter basis: fiber and minerals"
                return;
            }
            open = Optional.of(basis);
        }
        if (open.isPresent()) {
            takenOut(text.substring(from));
        }
    }

    /** Behind the last basis of a sentence: what is taken out of it, and has none of its own. */
    private void takenOut(String rest) {
        var out = TAKES_OUT.matcher(rest);
        if (!out.find()) {
            return;
        }
        var what = rest.substring(out.end());
        var subjects = subjects(what);
        boolean isWeak = out.group().matches("(?i)but|not|without|save");
        boolean isNext = !isWeak || beginsWithSubject(what);
        if (isNext) {
            open.addAll(subjects);
        }
        boolean isStrange = Pattern.compile("\\p{L}+")
                .matcher(what)
                .results()
                .anyMatch(word -> !NO_NAME.matcher(word.group()).matches());
        if (subjects.isEmpty() && isStrange && !isWeak) {
            isAllOpen = true;
        }
    }

    private static boolean beginsWithSubject(String what) {
        var places = places(what.strip().replaceFirst("(?i)^(?:for |the )+", ""));
        return !places.isEmpty() && places.get(0).from == 0;
    }

    private void tell(Analyte analyte, Basis basis) {
        var before = told.put(analyte, basis);
        if (before != null && before != basis) {
            twice.add(analyte);
        }
    }

    /** The analytes that a sentence names, alone or as a group. */
    static Set<Analyte> subjects(String text) {
        var all = EnumSet.noneOf(Analyte.class);
        places(text).forEach(place -> all.addAll(place.analytes));
        return all;
    }

    /** Names of analytes and of groups of them, from left to right. */
    private static List<Place> places(String text) {
        var words = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}'’-]*")
                .matcher(text)
                .results()
                .toList();
        var all = new ArrayList<Place>();
        for (int at = 0; at < words.size(); ) {
            int next = at + 1;
            for (int end = Math.min(words.size(), at + LONGEST_NAME); end > at; end--) {
                int from = words.get(at).start();
                int to = words.get(end - 1).end();
                var analytes = analytes(text.substring(from, to));
                if (!analytes.isEmpty()) {
                    all.add(new Place(from, to, analytes));
                    next = end;
                    break;
                }
            }
            at = next;
        }
        return all;
    }

    private static Set<Analyte> analytes(String name) {
        for (var group : GROUPS) {
            if (group.getKey().matcher(name).matches()) {
                return group.getValue();
            }
        }
        boolean isWord = name.length() > 2 || name.matches("\\p{Lu}\\p{L}?");
        return isWord && !name.matches("(?i)in|as|is|at|on|no|all|and|a|i")
                ? Heading.of(name)
                        .map(Heading::analyte)
                        .filter(Analyte::hasBasis)
                        .map(analyte ->
                                NITRATE.contains(analyte) && name.matches("(?i)nitrate.?") ? NITRATE : Set.of(analyte))
                        .orElse(Set.of())
                : Set.of();
    }

    /** The basis that a sentence says of this one; empty where none does. */
    public Optional<Basis> of(Analyte analyte) {
        return Optional.ofNullable(told.get(analyte));
    }

    /** Whether it is taken out of the basis of the others, and has none of its own. */
    public boolean isOpen(Analyte analyte) {
        return open.contains(analyte) && analyte.hasBasis();
    }

    /** Whether something is taken out of the basis of all, and nobody can tell what. */
    public boolean isAllOpen() {
        return isAllOpen;
    }
}
