package haywright.app.exchange.line;

import haywright.app.exchange.lab.Heading;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A name that its cell was too narrow for goes over two or three lines, and its figures stand in one of them: beside the
 * first line, the last one or the middle. Put together again, so that no part of a name is taken for the whole.
 */
public final class Wrapped {
    /** Columns of text by which the lines of one name may begin apart: a page sets each by its middle. */
    private static final int NEAR = 10;

    private static final Pattern OPEN = Pattern.compile(".*(?:[,/(-]|\\b(?:as|of|in|by|and|for))|.*[(\\[][^)\\]]*");
    private static final Pattern GOES_ON = Pattern.compile("[\\p{Ll}(].*|[^(\\[]*[)\\]].*");

    private final List<String> raw;
    private final Names names;

    private Wrapped(List<String> raw, Names names) {
        this.raw = new ArrayList<>(raw);
        this.names = names;
    }

    /** The same lines, as many of them; where parts of a name stood alone is an empty one. */
    public static List<String> joined(List<String> raw, Names names) {
        var all = new Wrapped(raw, names);
        for (int at = 0; at < raw.size(); at++) {
            all.join(at);
        }
        return all.raw;
    }

    private void join(int at) {
        var line = line(at);
        if (!line.isAligned() || line.words().stream().noneMatch(TextLine.Word::isFigure)) {
            return;
        }
        var before = part(at - 1, line);
        var after = part(at + 1, line);
        var first = TextLine.join(line.cells().get(0));
        boolean isNameless = !first.text().matches(".*\\p{L}.*") || isMeasure(first.text());
        if (isNameless) {
            if (before != null && after != null && isNear(before, after)) {
                put(at, before.from(), together(before.text(), after.text()), 0, true, true);
            } else if (before != null && OPEN.matcher(before.text()).matches()) {
                put(at, before.from(), before.text(), 0, true, false);
            }
            return;
        }
        if (after != null
                && isNear(first, after)
                && goesOn(first.text(), after.text())
                && isKnown(first.text(), after.text())) {
            put(at, first.from(), together(first.text(), after.text()), first.to(), false, true);
        } else if (before != null
                && isNear(before, first)
                && goesOn(before.text(), first.text())
                && isKnown(before.text(), first.text())) {
            put(at, before.from(), together(before.text(), first.text()), first.to(), true, false);
        }
    }

    private TextLine line(int at) {
        return TextLine.of(at, 1, at < 0 || at >= raw.size() ? "" : raw.get(at));
    }

    /** A line of one cell that stands in the column of names; null where it is none. */
    private TextLine.@Nullable Word part(int at, TextLine beside) {
        var line = line(at);
        if (line.isBlank() || line.cells().size() != 1) {
            return null;
        }
        var words = TextLine.join(line.words());
        boolean isName = words.text().matches(".*\\p{L}.*")
                && !words.text().contains(":")
                && words.text().length() < 60
                && line.words().stream().noneMatch(TextLine.Word::isFigure);
        var figures = beside.words().stream().filter(TextLine.Word::isFigure).findFirst();
        return isName && figures.isPresent() && words.to() < figures.get().from() ? words : null;
    }

    private static boolean isNear(TextLine.Word one, TextLine.Word other) {
        return Math.abs(one.from() - other.from()) <= NEAR;
    }

    /** "% CP", "ppm", "Mcal/lb": what stands beside a name, and is none. */
    private static boolean isMeasure(String text) {
        return text.startsWith("%")
                || Heading.unit(text).isPresent()
                || Heading.basis(text).isPresent();
    }

    private static boolean goesOn(String first, String second) {
        return OPEN.matcher(first).matches() || GOES_ON.matcher(second).matches();
    }

    private boolean isKnown(String first, String second) {
        return names.label(second).isEmpty()
                && names.label(together(first, second)).isPresent();
    }

    private static String together(String first, String second) {
        return first.endsWith("-") ? first + second : first + " " + second;
    }

    /** @param cut up to which column the name stood in the line already */
    private void put(int at, int from, String name, int cut, boolean isBefore, boolean isAfter) {
        var line = raw.get(at);
        var rest = " ".repeat(cut) + line.substring(Math.min(cut, line.length()));
        int room = rest.length() - rest.stripLeading().length();
        int start = Math.max(0, Math.min(from, room - 2 - name.length()));
        if (start + name.length() + 2 > room) {
            return; // its figures would move
        }
        raw.set(at, " ".repeat(start) + name + rest.substring(start + name.length()));
        if (isBefore) {
            raw.set(at - 1, "");
        }
        if (isAfter) {
            raw.set(at + 1, "");
        }
    }
}
