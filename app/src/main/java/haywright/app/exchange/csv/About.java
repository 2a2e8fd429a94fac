package haywright.app.exchange.csv;

import haywright.app.exchange.lab.Days;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Laboratory;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Understood.Cell;
import haywright.app.exchange.lab.Understood.Sample;
import haywright.forage.lab.Tested;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What a file says of a sample, or of all of them, beside their figures: by what it tells, in order. */
final class About {
    private static final Pattern CALLS_ITSELF =
            Pattern.compile("(?i)\\b(?:laborator(?:y|ies)|laboratoire|labs?|analytical|testing)\\b");

    /** "Sampled 10/03/2026" in one cell. */
    private static final Pattern DATED = Pattern.compile("(\\p{L}[\\p{L} .]*?)\\s+([^\\s].*[0-9].*)");

    private final Map<Told, List<String>> told = new EnumMap<>(Told.class);

    void add(Told what, String written) {
        var value = what.isDay() ? Days.in(written).orElse("") : written;
        var all = told.computeIfAbsent(what, k -> new ArrayList<>());
        if (!value.isBlank() && !all.contains(value)) {
            all.add(value);
        }
    }

    private List<String> all(Told what) {
        return told.getOrDefault(what, List.of());
    }

    String first(Told what) {
        return all(what).isEmpty() ? "" : all(what).get(0);
    }

    /** Labels with their values beside them, in lines that stand over a table. */
    static About over(Grid grid, int from, int to) {
        var about = new About();
        for (int row = from; row < to; row++) {
            for (int column = 0; column < grid.width(row); column++) {
                var cell = grid.cell(row, column);
                int colon = cell.indexOf(':');
                var inside =
                        colon < 1 ? null : Told.of(cell.substring(0, colon)).orElse(null);
                if (inside != null && colon + 1 < cell.length()) {
                    var value = cell.substring(colon + 1).strip();
                    about.add(inside, value);
                    if (isKept(inside, value)) {
                        grid.settle(row, column);
                    }
                    continue;
                }
                var dated = DATED.matcher(cell);
                var on = dated.matches() ? Told.of(dated.group(1)).orElse(null) : null;
                if (on != null && on.isDay() && Days.isDay(dated.group(2))) {
                    about.add(on, dated.group(2));
                    if (isKept(on, dated.group(2))) {
                        grid.settle(row, column);
                    }
                    continue;
                }
                var label = Told.of(cell).orElse(null);
                int next = column + 1;
                while (next < grid.width(row) && grid.isNothing(row, next)) {
                    next++;
                }
                boolean hasValue = next < grid.width(row)
                        && Told.of(grid.cell(row, next)).isEmpty()
                        && !areSeveral(grid, row, next)
                        && Heading.basis(grid.cell(row, next)).isEmpty();
                if (label != null && hasValue) {
                    about.add(label, grid.cell(row, next));
                    if (isKept(label, grid.cell(row, next))) {
                        grid.settle(row, column);
                        grid.settle(row, next);
                    }
                    column = next;
                }
            }
            if (about.all(Told.LABORATORY).isEmpty()
                    && CALLS_ITSELF.matcher(grid.cell(row, 0)).find()
                    && Told.of(grid.cell(row, 0)).isEmpty()) {
                about.add(Told.LABORATORY, grid.cell(row, 0));
                if (isKept(Told.LABORATORY, grid.cell(row, 0))) {
                    grid.settle(row, 0);
                }
            }
        }
        return about;
    }

    /** Whether values of several samples stand side by side behind a label, and none of them is of all. */
    private static boolean areSeveral(Grid grid, int row, int from) {
        var behind = IntStream.range(from, grid.width(row))
                .mapToObj(column -> grid.cell(row, column))
                .filter(text -> !text.isBlank())
                .toList();
        return behind.size() > 2
                && behind.stream().allMatch(text -> Told.of(text).isEmpty());
    }

    /** With what was said over the table before it, where this one says nothing of it; a new name begins a new sample. */
    About after(About before) {
        boolean isNew = Stream.of(Told.BAG, Told.NUMBER, Told.LOT).anyMatch(told::containsKey);
        before.told.forEach((what, values) -> {
            boolean isName = what == Told.BAG || what == Told.NUMBER || what == Told.LOT;
            if (!isNew || !isName && !what.isDay()) {
                told.putIfAbsent(what, values);
            }
        });
        return this;
    }

    /** Days of receipt, accounts and remarks have no place in a report here, and of methods only the two it knows. */
    static boolean isKept(Told told, String value) {
        return switch (told) {
            case BAG, NUMBER, LOT -> true;
            case SAMPLED, REPORTED -> value.isBlank() || Days.isDay(value);
            case LABORATORY -> value.equals(Laboratory.name(value));
            case METHOD -> value.isBlank() || Understood.ownMethod(value) != null;
            case RECEIVED, CUSTOMER, REMARK, OTHER -> false;
        };
    }

    /** @param all what is said of all samples; counts where nothing is said of this one */
    Sample sample(String code, About all, List<Cell> cells) {
        var names = new ArrayList<String>();
        names.add(code);
        names.addAll(all(Told.BAG));
        names.addAll(all(Told.NUMBER));
        names.removeIf(String::isBlank);
        if (names.isEmpty()) {
            names.addAll(all.all(Told.BAG));
            names.addAll(all.all(Told.NUMBER));
        }
        var lot = first(Told.LOT, all);
        return new Sample(
                names.isEmpty() ? "" : names.get(0),
                lot,
                names.stream()
                        .skip(1)
                        .distinct()
                        .filter(name -> !name.equals(names.get(0)))
                        .toList(),
                Laboratory.name(first(Told.LABORATORY, all)),
                first(Told.SAMPLED, all),
                first(Told.REPORTED, all),
                method(first(Told.METHOD, all)),
                cells,
                first(Told.CUSTOMER, all),
                Stream.concat(all(Told.REMARK).stream(), all.all(Told.REMARK).stream())
                        .toList());
    }

    private static Tested.@Nullable Method method(String words) {
        return Understood.ownMethod(words);
    }

    private String first(Told what, About all) {
        var own = first(what);
        return own.isEmpty() ? all.first(what) : own;
    }
}
