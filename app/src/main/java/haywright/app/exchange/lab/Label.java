package haywright.app.exchange.lab;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What the name of a figure says, taken apart to its last word: an analyte, and beside it hours, a method and its year,
 * a multiple of maintenance, what it is a share of, a unit, a basis. A name with a word left over is not known. A
 * number in a name belongs to the name.
 *
 * @param heading null where the name is understood and the figure is still not to be taken
 * @param why then the reason, in words; otherwise empty
 */
public record Label(@Nullable Heading heading, String why) {
    private static final int LONGEST = 90;
    private static final String BODIES =
            "ergot bodies are a share by weight; what is kept is their alkaloids, in ppb, and one does not tell the other";
    private static final String OPEN = "(?<=^|[\\s,;:/(\\[_-])";
    private static final String SHUT = "(?=$|[\\s,;:/)\\]_.-])";

    /** Where a rule or a method is written down; its number and its year are no figures. */
    private static final Pattern SOURCE = word(
            "(?:(?:by|per|from|using|via|method|eq\\.?|eqn\\.?|equation)\\s+)?"
                    + "(?:aoac|nrc|nasem|iso|astm|nfta|usda|ansi)\\b[\\s-]*(?:(?:method|eq\\.?)\\s*)?[0-9]*(?:[.:-][0-9]+)*"
                    + "|20[0-9]{2}\\.[0-9]{2}"
                    + "|(?:method|meth\\.?|procedure|proc\\.?|sop)\\s*(?:no\\.?|#)?\\s*[a-z]{0,3}[ -]?[0-9]+(?!\\.[0-9]+(?:$|[^.0-9]))[a-z]?(?:[.:-][0-9]+)*");

    private static final Pattern YEAR = Pattern.compile(
            "[(\\[](?:(?=[^()\\[\\]]*\\p{L})[^()\\[\\]]*\\b(?:19|20)[0-9]{2}\\b[^()\\[\\]]*|\\s*[0-9]+\\s*)[)\\]]");
    /** "TDN (from ADF)": what it was worked out from. */
    private static final Pattern FROM =
            Pattern.compile("[(\\[]\\s*(?:[\\p{L}.]+ )?(?:from|using|via)\\b[^()\\[\\]]*[)\\]]");

    /** "TDN (ADF equation)", "TDN, OSU summative": by which equation a laboratory works energy out. */
    private static final Pattern EQUATION = Pattern.compile(
            "[\\s,]*[(\\[]\\s*(?:adf|ndf|fib(?:er|re)|summative|regression|weiss|van soest|moore|nrc|nasem|oardc|osu|ohio|milk|energy|1x|legume|grass)?(?:[\\s,/-]+(?:[\\p{L}]+|[0-9]{4}))*\\s*(?:equations?|eqn?\\.?|formula|method|model|system|summative|based|basis ?eq)?\\s*[)\\]]$"
                    + "|[\\s,–-]+(?:[\\p{L}]+\\s+){0,2}(?:equation|eqn?\\.?|formula|method|model|system|summative|regression)$");

    private static final Pattern FACTOR = word("(?:n\\s*[x×*]\\s*[0-9][.,][0-9]+|[0-9][.,][0-9]+\\s*[x×*]\\s*n)");
    private static final Pattern HOURS = word("([0-9]{1,3})[\\s-]*(?:hours?|hrs?|h)\\.?");
    /** Digestibilities are named with bare hours too. */
    private static final Pattern BARE_HOURS =
            Pattern.compile("^((?:iv)?t*t*ndf-?d|undf(?:om)?|dndf|ivt?d(?:md)?)[ _-]?(?:om[ _-]?)?([0-9]{2,3})\\b");

    private static final Pattern TIMES = word("([1-5])\\s*[x×](?:\\s*maint(?:\\.|enance)?)?");
    private static final Pattern SHARE = Pattern.compile(
            "(?<=\\S)[\\s,;:(\\[]*(?:(?:as\\s+|in\\s+)?(?:%|pct|percent)\\s*(?:of\\s+)?|(?<=[\\s(])on\\s+)"
                    + "(?:the\\s+|total\\s+)?(crude protein|protein|cp|a?ndf(?:om)?|neutral detergent fib(?:er|re)|nitrogen|n|starch|fat|crude fat|ee|adf)"
                    + SHUT + "[)\\]]?");
    /** How a figure was come by, which changes nothing of what it is. */
    private static final String MANNERS =
            "est\\.?|estimated|calc\\.?|calculated|calculation|computed|predicted|by calculation|by difference|by weight|by mass|by"
                    + "|(?<!as[ _-])wet(?![ _/-]*(?:basis|weight|wt|matter))(?:[ -]chem(?:istry|\\.)?)?|chem(?:istry|ical)?\\.?|nirs?|near[- ]infra-?red|icp(?:[ -](?:ms|oes|aes))?|xrf|hplc|gc"
                    + "|lc-?ms(?:/ms)?|elisa|kjeldahl|dumas|combustion|oven|probe|meter|electrode|colorimetric|titration|gravimetric|in situ|in vitro"
                    + "|visual|strip|ash[ -]free|sul(?:f|ph)uric(?: acid)?|amylase(?:[ -]treated)?|sa|content|level|test|result|analy[sz]ed|ion";

    private static final Pattern MANNER = word("(?:" + MANNERS + ")(?: method)?");
    private static final Pattern ONLY_MANNER = Pattern.compile("[(\\[]?(?:" + MANNERS + ")[)\\].,;:]*");

    static final Pattern PERCENT_FIRST = Pattern.compile("^(?:%|pct\\b\\.?|percent\\b)\\s*(?:of )?");
    private static final Pattern SPACED = Pattern.compile("^\\p{L}(?: \\p{L}){1,4}(?![\\p{L}\\p{N}./])");
    /** "A.D.F.", "N.E.m". */
    private static final Pattern DOTTED =
            Pattern.compile("(?<![\\p{L}\\p{N}])(?:\\p{L}\\.){1,4}(?:\\p{L}(?![\\p{L}\\p{N}])\\.?|(?<=\\.\\p{L}\\.))");

    /** Printed as a share of protein or of the feed by different laboratories: never taken unless it is said. */
    private static final Set<Analyte> TO_BE_SAID = EnumSet.of(Analyte.SP, Analyte.RDP, Analyte.RUP, Analyte.NH3N);

    /** Beside a known name these make another of it. */
    private static final Set<String> CHANGES = Set.of(
            "ratio",
            "index",
            "balance",
            "per",
            "corrected",
            "adjusted",
            "bound",
            "free",
            "heat",
            "total",
            "true",
            "minus",
            "plus");

    private static final Set<Analyte> ENERGY = EnumSet.range(Analyte.TDN, Analyte.DE);

    private static Pattern word(String middle) {
        return Pattern.compile(OPEN + middle + SHUT);
    }

    /** Empty where it is no name that is known. */
    public static Optional<Label> of(String written) {
        var name = spaced(DOTTED.matcher(UnitWords.plain(Heading.key(written)))
                        .replaceAll(found -> found.group().replace(".", "")))
                .replaceAll("[\\s:.,;=*†‡§¹²³⁰⁴-⁹-]+$", "")
                .replaceAll("^[*•·-]+\\s*", "")
                .replaceAll("\\bne[/-]([mgl])\\b", "ne$1")
                .replaceAll("\\b(mcal|mj|kcal|mg|g|ug) (lb|kg|cwt)\\b", "$1/$2")
                .replaceAll(
                        "^(?:a?)(ndf|undf|ndf-?d|ivndfd|adf)(?: ?\\(a\\))?([ -]?[0-9]{2,3})?[ -]?\\(?om\\)?(?=$|[\\s,%])",
                        "$1$2")
                .replaceAll("^(a?ndf) ?\\(a\\)", "$1")
                .replaceAll("^(tdn|nfc|nsc|ne[lmg]|me|de),? (?:19|20)[0-9]{2}\\b", "$1")
                .replaceAll("\\b(mg|g) (no3(?:[- ]?n)?)/kg\\b", "as $2, $1/kg");
        if (name.isEmpty() || name.length() > LONGEST) {
            return Optional.empty();
        }
        name = Standing.without(name);
        var whole = AnalyteNames.canBegin(name) ? new Taking(name).label() : Optional.<Label>empty();
        return whole.isPresent() || name.indexOf('/') < 0 ? whole : ofSides(name);
    }

    /** "N D F" is NDF, as it is set wide in a heading or read by a scanner. */
    private static String spaced(String name) {
        return SPACED.matcher(name).replaceAll(found -> found.group().replace(" ", ""));
    }

    /** One name in two languages: a side that is known, where the other has no word that a name here could begin with. */
    private static Optional<Label> ofSides(String name) {
        int comma = name.indexOf(',', name.indexOf('/'));
        var tail = comma < 0 ? "" : name.substring(comma);
        var sides = Heading.sides(comma < 0 ? name : name.substring(0, comma));
        if (sides.size() > 4) {
            return Optional.empty();
        }
        Label known = null;
        for (var side : sides.subList(1, sides.size())) {
            var label = AnalyteNames.canBegin(side) ? new Taking(side + tail).label() : Optional.<Label>empty();
            if (label.isPresent() && known == null) {
                known = label.get();
            } else if (label.isPresent() && !label.get().equals(known) || label.isEmpty() && !isForeign(side)) {
                return Optional.empty();
            }
        }
        return Optional.ofNullable(known);
    }

    private static boolean isForeign(String side) {
        return side.matches("\\p{L}{3,}.*")
                && side.chars().noneMatch(Character::isDigit)
                && Heading.unit(side).isEmpty()
                && Heading.basis(side).isEmpty()
                && Arrays.stream(side.split("[^\\p{L}]+"))
                        .noneMatch(word -> word.length() > 2 && AnalyteNames.canBegin(word) || CHANGES.contains(word));
    }

    /**
     * What a name that is not known says at its end of this analyte, which somebody said it stands for: "Xylum g/kg DM".
     * Empty where it ends in neither a unit nor a basis.
     */
    static Optional<Heading> end(String written, Analyte analyte) {
        var parts = Heading.key(written).replaceAll("[(\\[,;:]", " $0").strip().split("\\s+");
        return IntStream.range(1, parts.length)
                .mapToObj(from -> String.join(" ", Arrays.asList(parts).subList(from, parts.length)))
                .map(end -> end.replaceAll("[()\\[\\]]", " ").replaceAll("^[,;:\\s]+", ""))
                .map(end -> Heading.measured(analyte, end))
                .flatMap(Optional::stream)
                .filter(said -> said.unit() != null || said.basis() != null || said.share() != null)
                .findFirst();
    }

    /** Whether a name that is known can begin with this word. */
    public static boolean canBegin(String word) {
        return AnalyteNames.canPerhapsBegin(word) || Standing.isOnceMore(word);
    }

    /**
     * What has to be asked of a figure before it is taken: "nitrate" alone is of the ion at one laboratory and of its
     * nitrogen at the next, 4.4 times apart, whatever its unit.
     */
    public static Optional<String> asked(String written, Analyte analyte, String figure) {
        var bare = Heading.key(written).replaceAll("[^\\p{L}0-9]+", " ");
        boolean isBare =
                analyte == Analyte.NO3 && !bare.matches(".*(?:no ?3|\\bion\\b|nitrogen|\\bn\\b|\\bas\\b|potassium).*");
        return isBare && figure.matches(".*[0-9].*")
                ? Optional.of(
                        "nitrate (NO3) or nitrate-nitrogen (NO3-N)? They are 4.4 times apart: say below which it is")
                : Optional.empty();
    }

    /** A word for how a figure was come by, alone. */
    public static boolean isManner(String word) {
        return ONLY_MANNER.matcher(Heading.key(word)).matches();
    }

    private static Label taken(Heading heading) {
        return new Label(heading, "");
    }

    /** A figure by another way of measuring is none of that name, whatever is said of it. */
    static final String ANOTHER = " is another measure";

    /** How dry matter is come by. */
    private static final Pattern OVEN = Pattern.compile("^(?:oven|toluene|corrected) (?=dry matter|moisture)");

    private static final Pattern TEMPERATURE =
            Pattern.compile("(?:,|\\(|\\bat|@)?\\s*[0-9]{2,3} ?(?:°|º|deg\\.?)? ?[cf]\\b");

    /** One name on its way: what was found is taken out of what is left. */
    private static final class Taking {
        private String left;
        private @Nullable Unit unit;
        private @Nullable Basis basis;
        private @Nullable Analyte whole;
        private int hours;
        private int times;

        Taking(String name) {
            this.left = name;
        }

        Optional<Label> label() {
            var known = AnalyteNames.of(left);
            if (known.isPresent()) {
                var share = SHARE.matcher(left);
                whole = share.find() ? whole(share.group(1)) : null;
                return Optional.of(said(known.get()));
            }
            left = OVEN.matcher(left).replaceFirst("");
            out(TEMPERATURE, found -> {});
            out(FACTOR, found -> {});
            out(YEAR, found -> {});
            out(FROM, found -> {});
            out(SOURCE, found -> {});
            out(HOURS, found -> hours = Integer.parseInt(found.group(1)));
            var bare = BARE_HOURS.matcher(left);
            if (hours == 0 && bare.find()) {
                hours = Integer.parseInt(bare.group(2));
                left = bare.replaceFirst("$1");
            }
            out(TIMES, found -> times = Integer.parseInt(found.group(1)));
            out(MANNER, found -> {});
            out(SHARE, found -> whole = whole(found.group(1)));
            tidy();
            var analyte = AnalyteNames.of(left).or(this::ofNitrogen).or(this::ofEnergy);
            for (int i = 0; analyte.isEmpty() && i < 3; i++) { // a unit, a basis, and a unit behind it
                var before = left;
                analyte = unitOut().or(this::basisOut);
                if (left.equals(before)) {
                    break;
                }
            }
            return analyte.map(this::said);
        }

        /** Nitrogen left in the fiber is the same share of nitrogen as its protein is of protein, and of nothing else. */
        private Optional<Analyte> ofNitrogen() {
            if (whole != Analyte.CP) {
                return Optional.empty();
            }
            return switch (left) {
                case "adin", "adf-n", "acid detergent insoluble nitrogen" -> Optional.of(Analyte.ADICP);
                case "ndin", "ndf-n", "neutral detergent insoluble nitrogen" -> Optional.of(Analyte.NDICP);
                default -> Optional.empty();
            };
        }

        /** By whichever equation, energy is what the laboratory says it is. */
        private Optional<Analyte> ofEnergy() {
            var equation = EQUATION.matcher(left);
            if (!equation.find() || equation.start() == 0) {
                return Optional.empty();
            }
            var name = left.substring(0, equation.start()).strip();
            var known = AnalyteNames.of(name).filter(ENERGY::contains);
            known.ifPresent(analyte -> left = name);
            return known;
        }

        private void out(Pattern pattern, java.util.function.Consumer<MatchResult> use) {
            var found = pattern.matcher(left);
            // a name that begins with it is another name
            if (found.find() && found.start() > 0) {
                use.accept(found.toMatchResult());
                left = left.substring(0, found.start()) + " " + left.substring(found.end());
                tidy();
            }
        }

        /** Without brackets that nothing is left in, and signs at the end. */
        private void tidy() {
            left = left.replaceAll("[(\\[][\\s,;:.]*[)\\]]", " ")
                    .replaceAll("\\s+", " ")
                    .replaceAll("\\s+([,;)\\]])", "$1")
                    .replaceAll("([(\\[])[\\s,;]+", "$1")
                    .replaceAll("[,;]\\s*([)\\]])", "$1")
                    .replaceAll("[\\s:.,;=*†-]+$", "")
                    .strip();
        }

        private Optional<Analyte> unitOut() {
            if (unit != null) {
                return Optional.empty();
            }
            var rest = PERCENT_FIRST.matcher(left).replaceFirst("");
            if (!rest.equals(left) && AnalyteNames.of(rest).isPresent()) {
                unit = Unit.PERCENT;
                left = rest;
                return AnalyteNames.of(left);
            }
            var parts = left.replaceAll("%(?=[^\\s)\\],;])", "% ").split("(?<=[\\s,;:(\\[])|(?=[\\s,;:)\\]])");
            for (int i = parts.length - 1; i > 0; i--) {
                var told = Heading.unit(parts[i].strip());
                if (told.isPresent() && !parts[i].isBlank()) {
                    unit = told.get();
                    parts[i] = " ";
                    left = String.join("", parts);
                    tidy();
                    return AnalyteNames.of(left);
                }
            }
            return Optional.empty();
        }

        private Optional<Analyte> basisOut() {
            if (basis != null) {
                return Optional.empty();
            }
            for (var one : List.of(Basis.NINETY_PCT, Basis.AS_RECEIVED, Basis.DRY_MATTER)) {
                var found = Heading.anywhere(one).matcher(left);
                while (found.find()) {
                    if (found.start() > 0) {
                        basis = one;
                        left = left.substring(0, found.start()) + " " + left.substring(found.end());
                        left = left.replaceAll("\\bof$", "");
                        tidy();
                        return AnalyteNames.of(left);
                    }
                }
            }
            return Optional.empty();
        }

        private Label said(Analyte analyte) {
            if (analyte == Analyte.ERGOT && (unit == Unit.PERCENT || unit == Unit.GRAM_PER_KG)) {
                return new Label(null, BODIES);
            }
            if (unit != null && unit.kind() != analyte.unit().kind()) {
                return new Label(null, "%s is not measured in %s".formatted(analyte.words(), unit.symbol()));
            }
            if (hours > 0 && analyte != Analyte.DM && analyte != Analyte.MOISTURE) {
                boolean isKept = switch (analyte) {
                    case NDFD -> hours == 48;
                    case UNDF -> hours == 240;
                    case IVTD -> hours == 30 || hours == 48;
                    default -> false;
                };
                if (!isKept) {
                    return new Label(null, ("%s after %d hours" + ANOTHER).formatted(analyte.words(), hours));
                }
            }
            if (times > 1 && analyte != Analyte.NEL) {
                return new Label(null, ("%s at %d times maintenance" + ANOTHER).formatted(analyte.words(), times));
            }
            if (TO_BE_SAID.contains(analyte) && whole == null && basis != Basis.DRY_MATTER) {
                return new Label(null, "the sheet does not print what it is a share of: the feed or its protein");
            }
            boolean isUsual = whole == null || Heading.isShareOf(analyte, whole);
            // the house keeps it as a share of its whole, and here it is one of dry matter
            var of = Heading.wholeOf(analyte);
            boolean isOfFeed = whole == null && of != null && basis == Basis.DRY_MATTER;
            var percent = whole == null ? unit : Unit.PERCENT;
            return taken(new Heading(
                    analyte,
                    percent,
                    whole != null ? null : basis,
                    isOfFeed ? Heading.Share.OF_FEED : whole == null || isUsual ? null : Heading.Share.of(whole)));
        }

        private static Analyte whole(String words) {
            return switch (words) {
                case "starch" -> Analyte.STARCH;
                case "fat", "crude fat", "ee" -> Analyte.FAT;
                case "adf" -> Analyte.ADF;
                case "nitrogen", "n", "crude protein", "protein", "cp" -> Analyte.CP;
                default -> Analyte.NDF;
            };
        }
    }
}
