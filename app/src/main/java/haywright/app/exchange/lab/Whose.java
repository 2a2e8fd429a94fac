package haywright.app.exchange.lab;

import haywright.forage.Basis;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Whose figures a heading speaks of, told from all headings beside each other: those of this sample, or of another year,
 * an average, a typical feed, a limit. Of several years the newest is the sample's.
 */
public enum Whose {
    /** Of this sample, beside others. */
    OWN,
    OTHERS,
    /** One of several times or samples, and which of them is meant cannot be told. */
    ASKED,
    /** The heading says nothing of it. */
    UNSAID;

    /** What is said of a line or column of others where it is listed. */
    public static final String LISTED = "it is of another year, an average or another feed";

    private static final String TIME =
            "(?:years?|yrs?\\.?|seasons?|crops?|cuttings?|cuts?|tests?|samples?|reports?|results?|analys[ie]s|values?|figures?|times?|falls?|winters?|springs?|summers?|months?|weeks?|harvests?|hay|forage|feed|lots?|cores?|visits?|submissions?|one)";

    /** "New hay" beside "old hay" are two lots, and a new result is this one. */
    private static final String PRINTED =
            "(?:crops?|tests?|samples?|reports?|results?|analys[ie]s|values?|figures?|year)";

    private static final Pattern EARLIER = Pattern.compile("(?iu)(?:your |our |the |from |a )*"
            + "(?:(?:previous|prev\\.?|preceding|prior|former|ly|py)(?![\\p{L}\\p{N}]).*"
            + "|(?:last|past|earlier|before|then|back then)(?:[ -]" + TIME + ")*(?:['’]s)?(?: " + TIME + ")*"
            + "|(?:old|older|oldest)(?: " + PRINTED + ")*"
            + "|" + TIME + " (?:ago|before|earlier)|(?:one|two|[0-9]+) " + TIME + " (?:ago|before|earlier))");

    private static final Pattern MANY = Pattern.compile(
            "(?iu)(?<![\\p{L}\\p{N}])(?:average|averages|averaged|avg\\.?|mean|median|norms?|benchmarks?|typical(?:ly)?|usual(?:ly)?|goals?|targets?|desired|recommended|recommendations?|guidelines?|guide values?|historical|historic|history)(?![\\p{L}\\p{N}]).{0,40}"
                    + "|^all (?:[\\p{L}-]+ ){0,3}(?:hays?|forages?|samples?|feeds?|silages?|straws?|haylages?|alfalfas?|bales?)(?:,? (?:20)?[0-9]{2})?$|^(?:reference|control|standard|check) (?:hay|sample|feed|material|forage|straw|silage)\\b.*|.*\\bqc ?[0-9]*$"
                    + "|(?<![\\p{L}\\p{N}])(?:normal|expected|published|book|table)(?: " + TIME
                    + "| (?:range|level|for).{0,30})?$"
                    + "|^(?:(?:normal|typical|expected|reference|usual|average|acceptable|desired|target|state|county|regional|area|district)\\s+)*(?:ranges?|min(?:imum)?s?\\.?|max(?:imum)?s?\\.?|lows?|highs?|lowest|highest)(?:\\s*[-–/&]\\s*(?:min(?:imum)?|max(?:imum)?|low|high)\\.?| to .{1,12}| (?:value|level|allowed|of .{1,30}))?$"
                    + "|^(?:std\\.?|standard)(?: dev(?:iation|\\.)?| error|s)?$");

    private static final Pattern NOW = Pattern.compile(
            "(?iu)(?:the )?(?:(?:this|current|present|latest|most recent|recent|yours?|mine|ours|today['’]?s?|now|ty|our)(?:[ -](?:this|current|latest|own))?(?:[ -]"
                    + TIME + "| (?:bag|number|no\\.?))*(?:['’]s)?(?: " + TIME + ")?|(?:new|newest)(?: " + PRINTED
                    + ")*)");

    private static final Pattern COLUMN = Pattern.compile(
            "(?i)(?:(?:sample|test|report|results?|crop|harvest|hay|growing)[ _]?)?(?:years?|seasons?|yrs?\\.?)(?:[ _](?:sampled|tested|of (?:sample|test|report)))?|crops?|harvests?|period|when|whose|source");

    private static final int MOST_WORDS_OF_A_BASIS = 4;

    /** What a heading says beside the basis of its figures: "2026, DM", "as fed (last year)". */
    public record Said(String who, Optional<Basis> basis) {}

    /** The two parts of a heading; a heading that is only a basis has no other part. */
    public static Said said(String heading) {
        var words = heading.strip().split("\\s+");
        for (int many = Math.min(words.length, MOST_WORDS_OF_A_BASIS); many > 0; many--) {
            for (int from : List.of(0, words.length - many)) {
                var part = String.join(" ", Arrays.asList(words).subList(from, from + many));
                var basis = Heading.basis(part.replaceAll("^[\\s,:(\\[–-]+|[\\s,:)\\]–-]+$", ""));
                if (basis.isPresent()) {
                    var left = new ArrayList<>(Arrays.asList(words));
                    left.subList(from, from + many).clear();
                    return new Said(bare(String.join(" ", left)), basis);
                }
            }
        }
        return new Said(bare(heading), Optional.empty());
    }

    private static String bare(String text) {
        return text.replaceAll("[()\\[\\]]", " ")
                .replaceAll("^[\\s,;:–—=_*-]+|[\\s,;:–—=_*-]+$", "")
                .replaceAll("\\s+", " ");
    }

    /** One for each heading, in their order. @param headings without the words of a basis */
    public static List<Whose> of(List<String> headings) {
        var all = new ArrayList<>(headings.stream().map(Whose::alone).toList());
        var times = headings.stream()
                .map(heading -> isOthers(heading) ? Optional.<Period>empty() : Period.in(heading))
                .toList();
        var said = times.stream().flatMap(Optional::stream).toList();
        boolean isOneTime = said.stream()
                        .map(time -> List.of(String.valueOf(time.year()), time.within()))
                        .distinct()
                        .count()
                <= 1;
        for (int i = 0; i < all.size(); i++) {
            var time = times.get(i).orElse(null);
            if (time == null) {
                continue;
            }
            all.set(i, isOneTime ? beside(headings, i, times) : among(time, said));
        }
        if (isOneTime && all.contains(ASKED)) { // what stands beside the only time may be this sample's as well
            for (int i = 0; i < all.size(); i++) {
                boolean isOpen = all.get(i) == UNSAID && !headings.get(i).isBlank();
                all.set(i, isOpen ? ASKED : all.get(i));
            }
        }
        if (all.contains(OTHERS) && !all.contains(OWN)) { // "sample" beside "average"
            headings.stream()
                    .filter(heading -> Heading.key(heading).equals("sample"))
                    .forEach(heading -> all.set(headings.indexOf(heading), OWN));
        }
        return all;
    }

    /** Of the only time that is said. */
    private static Whose beside(List<String> headings, int at, List<Optional<Period>> times) {
        var own = alone(headings.get(at));
        if (own == OWN) {
            return OWN; // "this year (2026)"
        }
        var others = new ArrayList<Whose>();
        for (int i = 0; i < headings.size(); i++) {
            if (times.get(i).isEmpty()) {
                others.add(alone(headings.get(i)));
            }
        }
        if (others.isEmpty()) {
            return UNSAID;
        }
        if (others.contains(OWN)) {
            return OTHERS;
        }
        return others.contains(UNSAID) ? isName(times.get(at).orElseThrow()) ? UNSAID : ASKED : OWN;
    }

    /** Of several times. */
    private static Whose among(Period time, List<Period> all) {
        boolean isOneName =
                all.stream().map(Period::rest).map(Whose::name).distinct().count() == 1;
        boolean areYears = all.stream().map(Period::year).noneMatch(Objects::isNull);
        boolean isOneYear =
                areYears && all.stream().map(Period::year).distinct().count() == 1;
        if (!areYears || isOneYear) {
            return isOneName ? ASKED : UNSAID; // under names of their own they are samples of one season
        }
        if (!isOneName) {
            return ASKED;
        }
        int newest = Collections.max(
                all.stream().map(Period::year).filter(Objects::nonNull).toList());
        var year = Objects.requireNonNull(time.year());
        boolean isOnlyOne = all.stream()
                        .filter(other -> Objects.equals(other.year(), newest))
                        .map(Period::within)
                        .distinct()
                        .count()
                == 1;
        return year < newest ? OTHERS : isOnlyOne ? OWN : ASKED;
    }

    /** Words beside a time that call the sample something; "this" and "new" do not. */
    private static String name(String rest) {
        return NOW.matcher(rest).matches() ? "" : rest;
    }

    private static boolean isName(Period time) {
        return !name(time.rest()).isEmpty();
    }

    private static boolean isOthers(String heading) {
        return EARLIER.matcher(heading.strip()).matches()
                || MANY.matcher(heading.strip()).find()
                || ColumnWords.isLimit(heading);
    }

    /** What a heading says without the others. */
    private static Whose alone(String heading) {
        var text = bare(heading);
        if (isOthers(text)) {
            return OTHERS;
        }
        var time = Period.in(text);
        var rest = time.map(Period::rest).orElse(text);
        return !rest.isEmpty() && NOW.matcher(rest).matches() || ColumnWords.isValue(text) ? OWN : UNSAID;
    }

    /** "Last year, dry matter": of an earlier time, whatever stands behind it. */
    public static boolean isEarlier(String heading) {
        return EARLIER.matcher(said(heading).who()).matches();
    }

    /** Whether it says so and calls the sample by no name: "2025", "last year". */
    public static boolean isOnly(String heading) {
        return isSaid(heading)
                && Period.in(bare(heading)).map(time -> !isName(time)).orElse(true);
    }

    /** Whether years, or words that say whose figures stand there, stand under this heading or beside it. */
    public static boolean isColumn(String heading) {
        return COLUMN.matcher(heading.strip()).matches();
    }

    /** "DM 2026": a basis beside a time, and nothing else. */
    public static boolean isOfATime(String heading) {
        var said = said(heading);
        return said.basis().isPresent()
                && Period.in(said.who()).filter(time -> !isName(time)).isPresent();
    }

    /** In place of a sample's name: an average, a goal, a limit, another time. */
    public static boolean isOfOthers(String name) {
        return isOthers(bare(name));
    }

    /** Whether a heading says anything of whose figures stand under it. */
    public static boolean isSaid(String heading) {
        var text = bare(heading);
        return alone(text) != UNSAID || Period.in(text).isPresent();
    }
}
