package haywright.app.exchange.text;

import haywright.app.exchange.lab.BasisSaid;
import haywright.app.exchange.lab.Legend;
import haywright.forage.Basis;
import haywright.forage.lab.Tested;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What a sheet says outside its tables: the basis of all its figures, over them or below, and what its marks mean.
 * {@code TDN*} with {@code * dry matter basis} at the foot is on dry matter; {@code Lignin¹} with {@code ¹ percent of
 * NDF} is a share of fiber.
 */
final class Footnotes {
    private final Legend legend;
    private final Map<Integer, List<Place>> places = new LinkedHashMap<>();
    private final Set<Basis> bases = new HashSet<>();

    private record Place(String mark, int at) {}

    Footnotes(List<String> raw) {
        legend = new Legend(raw);
        raw.stream()
                .filter(line -> line.length() <= TextLine.MOST_COLUMNS)
                .forEach(line -> BasisSaid.in(line).forEach(one -> bases.add(one.basis())));
    }

    /** The one basis that the sheet says of all its figures; null where it says none, or several. */
    @Nullable
    Basis onlyBasis() {
        return bases.size() == 1 ? bases.iterator().next() : null;
    }

    /** A line without its marks, which are remembered by where they stood. A raised figure is always a mark. */
    String without(int number, String raw) {
        if (raw.length() > TextLine.MOST_COLUMNS || legend.isIn(number)) {
            return raw;
        }
        var plain = new StringBuilder(raw);
        var mark = Pattern.compile("(?<=^|[\\p{L}\\p{N}%)\\s])(?:" + Legend.MARK + ")(?=[\\s,;:.]|$)")
                .matcher(raw);
        while (mark.find()) {
            boolean isRaised = mark.group().matches("[⁰-⁹¹²³]+");
            if (isRaised || legend.of(mark.group()) != null) {
                plain.replace(mark.start(), mark.end(), " ".repeat(mark.group().length()));
                places.computeIfAbsent(number, n -> new ArrayList<>()).add(new Place(mark.group(), mark.start()));
            }
        }
        return plain.toString();
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
            int to = row.figures().get(i).to();
            for (var meaning : of(line, to, to + 1)) {
                marked = marked.with(meaning, i, names);
            }
        }
        return marked;
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
                .map(place -> legend.of(place.mark))
                .filter(meaning -> meaning != null)
                .toList();
    }
}
