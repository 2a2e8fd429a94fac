package haywright.app.exchange.text;

import haywright.app.exchange.lab.HalfDry;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.line.Row;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Boxes side by side on a page: what the heading of one says holds for what begins under it, and for no other box. */
final class Sections {
    /** Columns of text by which a line may begin beside its heading. */
    private static final int NEAR = 3;

    private static final Pattern TITLE =
            Pattern.compile("(\\p{L}[^0-9:]*?)[\\s,]*(?:[(\\[,–]|(?<=\\s)-)\\s*([^()\\[\\]]+?)[)\\]]?");

    /** "Composition of dry matter", "analysis of the fresh silage". */
    private static final Pattern OF = Pattern.compile(
            "(?iu).*\\b(?:composition|analys[ie]s|results?|contents?|values?|constituents?|nutrients?|minerals?|fib(?:er|re)|energy|protein|carbohydrates?)\\b.*");

    private static final Pattern DRY =
            Pattern.compile("(?i)\\b(?:of|in|on) (?:the )?(?:dry (?:matter|weight|substance)|dm)\\b");
    private static final Pattern WET = Pattern.compile(
            "(?i)\\b(?:(?:of|in|on) (?:the )?fresh(?: (?:matter|weight|\\p{L}+))?|as (?:received|fed|sampled|is|delivered))\\b");

    private static final int MOST_WORDS = 9;

    /** "(g per kg)" or ", g/kg" at the end of a heading. */
    private static final Pattern UNIT =
            Pattern.compile(".*?(?:[(\\[]\\s*(?:all |in )*([^()\\[\\]]+?)[)\\]]|,\\s*(?:in )?([^,()]+))\\s*:?");

    private final Map<Integer, Unit> units = new HashMap<>();
    private final Map<Integer, Basis> bases = new HashMap<>();
    private final Set<Integer> others = new HashSet<>();

    /** A cell without a figure that was taken: perhaps the heading of a box. */
    void open(TextLine line, List<Word> cell) {
        var text = TextLine.join(cell).text();
        int from = cell.get(0).from();
        if (line.isAligned() && Told.speaksOfOthers(text)) {
            others.add(from);
        }
        var title = TITLE.matcher(text);
        var basis = title.matches() ? Heading.basis(title.group(2)).orElse(of(text)) : of(text);
        if (text.matches("\\p{L}[^0-9:]*:?") && cell.size() <= MOST_WORDS) {
            units.keySet().removeIf(at -> at == from);
            var unit = UNIT.matcher(text);
            if (unit.matches()) {
                Heading.unit((unit.group(1) == null ? unit.group(2) : unit.group(1)).replaceFirst("^percent$", "%"))
                        .ifPresent(one -> units.put(from, one));
            }
        }
        if (basis != null) {
            bases.put(from, basis);
        } else if (text.matches("\\p{L}[^0-9:]*")) {
            bases.keySet().removeIf(at -> at == from); // the next box begins
        }
    }

    private static @Nullable Basis of(String text) {
        boolean isDry = DRY.matcher(text).find() && !HalfDry.isIn(text);
        boolean isWet = WET.matcher(text).find();
        boolean isTitle =
                OF.matcher(text).matches() && text.matches("\\p{L}[^0-9:]*:?") && text.split(" ").length <= MOST_WORDS;
        return !isTitle || isDry == isWet ? null : isDry ? Basis.DRY_MATTER : Basis.AS_RECEIVED;
    }

    /** The unit that the heading of its box says; empty where it says none. */
    Optional<Unit> unit(TextLine line, Row row) {
        int from = cell(line, row);
        return units.entrySet().stream()
                .filter(box -> Math.abs(box.getKey() - from) <= NEAR)
                .findFirst()
                .map(Map.Entry::getValue);
    }

    /** What stood over an empty line about other figures holds no longer. */
    void gap() {
        others.clear();
    }

    boolean areOthers(TextLine line, Row row) {
        return others.stream().anyMatch(at -> Math.abs(at - cell(line, row)) <= NEAR);
    }

    /** What the heading of its box says, else what is said over the whole. */
    @Nullable
    Basis basis(TextLine line, Row row, @Nullable Basis said) {
        int from = cell(line, row);
        return bases.entrySet().stream()
                .filter(box -> Math.abs(box.getKey() - from) <= NEAR)
                .findFirst()
                .<@Nullable Basis>map(Map.Entry::getValue)
                .orElse(said);
    }

    /** Where the cell begins that a row begins in. */
    private static int cell(TextLine line, Row row) {
        var first = row.words().get(0);
        return line.cells().stream()
                .filter(cell -> cell.contains(first))
                .mapToInt(cell -> cell.get(0).from())
                .findFirst()
                .orElse(first.from());
    }
}
