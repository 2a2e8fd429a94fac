package haywright.app.exchange.text;

import haywright.app.exchange.lab.BasisExcept;
import haywright.app.exchange.lab.BasisSaid;
import haywright.app.exchange.lab.Legend;
import haywright.app.exchange.lab.ShareSaid;
import haywright.app.exchange.line.Names;
import haywright.app.exchange.line.Row;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.Tested;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a sheet says outside its tables: the basis of all its figures, over them or below, and what its marks mean.
 * {@code TDN*} with {@code * dry matter basis} at the foot is on dry matter; {@code Lignin¹} with {@code ¹ percent of
 * NDF} is a share of fiber.
 */
final class Footnotes {
    private static final Pattern SIGN =
            Pattern.compile("(?<=^|[\\p{L}\\p{N}%)\\s])(" + Legend.MARK + ")(?=[\\s,;:.]|$)");

    /** A letter or a figure without brackets: behind a figure, or behind a name with room after it. */
    private static final Pattern LETTER = Pattern.compile(
            "((?<=[0-9]%? {0,2})[a-z]\\)?|(?<=[0-9]%? {1,2})[0-9]\\)?(?=\\s+(?:%|\\p{L}{1,4}/|pp[mb]))|(?<=\\p{L}{2} ?)[a-z0-9](?=\\s{2,}))(?=\\s|$|[,;])");

    /** What stands for a basis, at the end of a line or of a cell. */
    private static final Pattern BASIS = Pattern.compile(
            "(?<=[0-9%\\p{L})] {1,40}\\(?)([\\p{Lu}]{1,3}|(?<=[0-9%] {1,40}\\(?)[0-9])(?=\\)?\\s*$|\\)?\\s{2,}|\\)?\\s*[|,;])");

    private static final Pattern BRACKETS = Pattern.compile("\\(([*†‡§])\\)");

    /** A sentence that speaks of marks and of a basis. */
    private static final Pattern OF_MARKS = Pattern.compile(
            "(?iu)(?=.*(?<!\\p{L})(?:stars?|starred|asterisk\\p{L}*|daggers?|mark(?:s|ed)?|symbols?|signs?|flag(?:s|ged)?|[*†‡§]+)(?!\\p{L}))(?=.*(?<!\\p{L})(?:basis|dry|as[ -](?:received|fed|is|sampled))(?!\\p{L})).*");

    private static final Pattern UNEXPLAINED = Pattern.compile("([*†‡§]{1,3})\\s*$");

    private final List<String> lines;
    private final Legend legend;
    private final Map<Integer, List<Place>> places = new LinkedHashMap<>();
    private final Set<Basis> bases = new HashSet<>();
    private final BasisExcept except;
    private final ShareSaid shares;

    private record Place(String mark, int at) {}

    Footnotes(List<String> raw) {
        lines = List.copyOf(raw);
        legend = new Legend(raw);
        except = BasisExcept.in(raw);
        shares = ShareSaid.in(raw);
        raw.stream()
                .filter(line -> line.length() <= TextLine.MOST_COLUMNS)
                .forEach(line -> BasisSaid.in(line).forEach(one -> bases.add(one.basis())));
    }

    /** The mark of a row that no legend explains, where a sentence says that marks tell the basis; null for none. */
    @Nullable
    String unexplained(Row row) {
        boolean isVague = IntStream.range(0, lines.size())
                .anyMatch(at -> !legend.isIn(at + 1)
                        && lines.get(at).length() <= TextLine.MOST_COLUMNS
                        && OF_MARKS.matcher(lines.get(at)).matches());
        return !isVague
                ? null
                : Stream.concat(Stream.of(row.name()), row.figures().stream().map(Word::text))
                        .map(UNEXPLAINED::matcher)
                        .filter(Matcher::find)
                        .map(found -> found.group(1))
                        .filter(mark -> legend.of(mark) == null)
                        .findFirst()
                        .orElse(null);
    }

    /** All lines of the sheet, as they came. */
    List<String> lines() {
        return lines;
    }

    /** Whether a line says what one mark means, and nothing of the figures without it. */
    boolean isLegend(TextLine line) {
        return legend.isOfOne(line.number());
    }

    /** Whether a line says what a mark means. */
    boolean hasMeaning(TextLine line) {
        return legend.isIn(line.number());
    }

    /** Whether a line begins with a mark whose meaning stands behind it, and says nothing else. */
    boolean isAll(TextLine line) {
        return legend.isAll(line.number());
    }

    /** The one basis that the sheet says of all its figures; null where it says none, or several. */
    @Nullable
    Basis onlyBasis() {
        return bases.size() == 1 ? bases.iterator().next() : null;
    }

    /** What the sheet says of the basis of some figures alone. */
    BasisExcept except() {
        return except;
    }

    /** A line without its marks, which are remembered by where they stood. A raised figure is always a mark. */
    String without(int number, String raw) {
        if (raw.length() > TextLine.MOST_COLUMNS || legend.isIn(number)) {
            return raw;
        }
        var bare = BRACKETS.matcher(raw).replaceAll(" $1 ");
        var plain = new StringBuilder(bare);
        for (var pattern : List.of(SIGN, LETTER)) {
            var mark = pattern.matcher(bare);
            while (mark.find()) {
                boolean isRaised = mark.group(1).matches("[" + Legend.RAISED + "]+");
                if (isRaised || legend.of(mark.group(1)) != null) {
                    put(plain, mark.start(1), mark.group(1), number);
                }
            }
        }
        var basis = BASIS.matcher(raw);
        while (basis.find()) {
            if (legend.letter(basis.group(1)).isPresent()) {
                put(plain, basis.start(1), basis.group(1), number);
            }
        }
        return plain.toString();
    }

    private void put(StringBuilder plain, int at, String mark, int number) {
        plain.replace(at, at + mark.length(), " ".repeat(mark.length()));
        places.computeIfAbsent(number, n -> new ArrayList<>()).add(new Place(mark, at));
    }

    Optional<String> share(Analyte analyte) {
        return shares.of(analyte);
    }

    /** A row as the share that a sentence of the sheet says it is. */
    Row share(Row row, Names names) {
        var heading = row.heading();
        var share =
                heading == null || heading.share() != null ? Optional.<String>empty() : shares.of(heading.analyte());
        if (share.isEmpty()) {
            return row;
        }
        boolean isOfFeed =
                heading != null && heading.basis() != null || !row.bases().isEmpty();
        return isOfFeed
                ? row.not(ShareSaid.contradicted(share.get()))
                : row.with(new Legend.Meaning(null, null, share.get(), "", ""), -1, names);
    }

    /** A row with what its marks say of it: at its name for all of its figures, behind a figure for that one. */
    Row on(TextLine line, Row row, Names names) {
        if (!places.containsKey(line.number()) || row.figures().isEmpty()) {
            return row;
        }
        var marked = row;
        for (var meaning :
                of(line, row.words().get(0).from(), row.figures().get(0).from())) {
            marked = marked.with(meaning, -1, names);
        }
        for (int i = 0; i < row.figures().size(); i++) {
            int from = row.figures().get(i).to();
            boolean isLast = i + 1 == row.figures().size();
            // behind the last one as far as the next row of the line, if it has one
            int to = isLast ? end(line, row, names) : row.figures().get(i + 1).from() - 1;
            for (var meaning : of(line, from, to)) {
                marked = marked.with(meaning, i, names);
            }
        }
        return marked;
    }

    private static int end(TextLine line, Row row, Names names) {
        int to = row.figures().get(row.figures().size() - 1).to();
        return names.rows(line).stream()
                .map(other -> other.words().get(0).from() - 1)
                .filter(from -> from > to)
                .min(Integer::compare)
                .orElse(Integer.MAX_VALUE);
    }

    /** How the figures of a row were measured, by its marks; null where they do not say. */
    Tested.@Nullable Method method(TextLine line, Row row) {
        int from = row.words().get(0).from();
        int to = row.words().get(row.words().size() - 1).to();
        return of(line, from, to + 1).stream()
                .map(Legend.Meaning::method)
                .filter(method -> method != null)
                .findFirst()
                .orElse(null);
    }

    private List<Legend.Meaning> of(TextLine line, int from, int to) {
        return places.getOrDefault(line.number(), List.of()).stream()
                .filter(place -> from <= place.at && place.at <= to)
                .<Legend.@Nullable Meaning>map(place -> {
                    var meaning = legend.of(place.mark);
                    var basis = legend.letter(place.mark);
                    return meaning == null && basis.isPresent()
                            ? new Legend.Meaning(basis.get(), null, "", "", "")
                            : meaning;
                })
                .filter(meaning -> meaning != null)
                .toList();
    }
}
