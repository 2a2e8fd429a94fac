package haywright.app.exchange.text;

import haywright.app.exchange.lab.BasisSaid;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Understood;
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
    private static final String MARK = "[*†‡§]{1,3}|[⁰¹²³⁴-⁹]{1,2}|\\([a-z]\\)";
    /** A mark, and what it means up to the next one or the end of the sentence. */
    private static final Pattern LEGEND = Pattern.compile("(?:^|(?<=[\\s.;,]))(" + MARK
            + ")\\s*[=:–-]?\\s*(\\p{L}|%)((?:(?!\\s(?:" + MARK + ")\\s*[=:\\p{L}])(?!\\.\\s|\\.$|;).)*)");

    private static final Pattern SHARE = Pattern.compile(
            "(?i)(?:(?:as|in|is|are|given|expressed|reported) )*(?:%|percent|pct\\.?) ?(?:of )?(?:the )?(.+)");
    private static final Pattern ABOUT_FIGURES =
            Pattern.compile("(?i)\\b(?:basis|dry|as[ -]received|as[ -]fed|converted|percent of|% of)\\b");

    /**
     * What a mark means.
     *
     * @param share "% of NDF", as it would stand behind a name; empty for none
     * @param form "as NO3-N", likewise
     * @param why what it says of figures and is not understood; empty as a rule
     */
    record Meaning(@Nullable Basis basis, Tested.@Nullable Method method, String share, String form, String why) {
        boolean isTold() {
            return basis != null || method != null || !share.isEmpty() || !form.isEmpty() || !why.isEmpty();
        }
    }

    private final Map<String, Meaning> marks = new LinkedHashMap<>();
    private final Map<Integer, List<Place>> places = new LinkedHashMap<>();
    private final Set<Integer> legends = new HashSet<>();
    private final Set<Basis> bases = new HashSet<>();

    private record Place(String mark, int at) {}

    Footnotes(List<String> raw) {
        for (int number = 1; number <= raw.size(); number++) {
            var line = raw.get(number - 1);
            var found = LEGEND.matcher(line);
            while (line.length() <= TextLine.MOST_COLUMNS && found.find()) {
                var meaning = meaning(found.group(2) + found.group(3));
                boolean isSaid =
                        meaning.isTold() || line.substring(found.end(1)).strip().matches("[=:].*");
                if (isSaid) {
                    marks.merge(found.group(1), meaning, (one, other) -> one.isTold() ? one : other);
                    legends.add(number);
                }
            }
            if (line.length() <= TextLine.MOST_COLUMNS) {
                BasisSaid.in(line).forEach(one -> bases.add(one.basis()));
            }
        }
    }

    private static Meaning meaning(String words) {
        var text = words.strip().replaceAll("[.,;]+$", "");
        var basis = Heading.basis(BasisSaid.bare(text + " "));
        if (basis.isPresent()) {
            return new Meaning(basis.get(), null, "", "", "");
        }
        var share = SHARE.matcher(text);
        if (share.matches()) {
            var on = Heading.basis(share.group(1));
            return on.isPresent()
                    ? new Meaning(on.get(), null, "", "", "")
                    : new Meaning(null, null, "% of " + share.group(1), "", "");
        }
        if (text.matches("(?i)(?:expressed |reported |given )?as \\S.*")
                && Heading.of(text.replaceFirst("(?i)^.*?\\bas ", "")).isPresent()) {
            return new Meaning(null, null, "", text.replaceFirst("(?i)^.*?\\bas ", "as "), "");
        }
        var method = Understood.ownMethod(text);
        return method == null && ABOUT_FIGURES.matcher(text).find()
                ? new Meaning(null, null, "", "", "its mark says “%s”, and that is not understood".formatted(text))
                : new Meaning(null, method, "", "", "");
    }

    /** The one basis that the sheet says of all its figures; null where it says none, or several. */
    @Nullable
    Basis onlyBasis() {
        return bases.size() == 1 ? bases.iterator().next() : null;
    }

    /** A line without its marks, which are remembered by where they stood. A raised figure is always a mark. */
    String without(int number, String raw) {
        if (raw.length() > TextLine.MOST_COLUMNS || legends.contains(number)) {
            return raw;
        }
        var plain = new StringBuilder(raw);
        var mark = Pattern.compile("(?<=^|[\\p{L}\\p{N}%)\\s])(?:" + MARK + ")(?=[\\s,;:.]|$)")
                .matcher(raw);
        while (mark.find()) {
            boolean isRaised = mark.group().matches("[⁰-⁹¹²³]+");
            if (isRaised || marks.containsKey(mark.group())) {
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
                .map(Meaning::method)
                .filter(method -> method != null)
                .findFirst()
                .orElse(null);
    }

    private List<Meaning> of(TextLine line, int from, int to) {
        return places.getOrDefault(line.number(), List.of()).stream()
                .filter(place -> from <= place.at && place.at <= to)
                .map(place -> marks.get(place.mark))
                .filter(meaning -> meaning != null)
                .toList();
    }
}
