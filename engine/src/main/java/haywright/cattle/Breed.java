package haywright.cattle;

import haywright.workings.PublishedTable;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What the breed decides where the ranch has no figure of its own. A first cross is written {@code Angus x Hereford} and
 * is the mean of its parents.
 *
 * @param effect multiplies maintenance; 1 for most
 * @param birthWeight of calves from mature cows, kg
 * @param peakMilk of mature cows, kg a day
 */
public record Breed(String name, double effect, double birthWeight, double peakMilk, Source source) {
    private static final List<Breed> TABLE = PublishedTable.read(Breed.class, "breeds.csv").rows().stream()
            .map(Breed::row)
            .toList();

    private static final Pattern CROSS = Pattern.compile("\\s+[x×]\\s+");

    /** Beef cattle of no particular breed: the cow of the 1996 tables. */
    public static final Breed AVERAGE = TABLE.get(0);

    public static List<Breed> all() {
        return TABLE;
    }

    /** @param name as a group has it; empty for {@link #AVERAGE} */
    public static Breed named(String name) {
        if (name.isBlank()) {
            return AVERAGE;
        }
        var parents = CROSS.splitAsStream(name.strip()).map(Breed::one).toList();
        return parents.size() == 1 ? parents.get(0) : cross(name.strip(), parents);
    }

    private static Breed cross(String name, List<Breed> parents) {
        return new Breed(
                name,
                parents.stream().mapToDouble(Breed::effect).average().orElseThrow(),
                parents.stream().mapToDouble(Breed::birthWeight).average().orElseThrow(),
                parents.stream().mapToDouble(Breed::peakMilk).average().orElseThrow(),
                Source.memory("mean of the parent breeds; NRC 1996"));
    }

    private static Breed one(String name) {
        return TABLE.stream()
                .filter(b -> b.name.equalsIgnoreCase(name))
                .findFirst()
                .orElseThrow(() -> new Refused(
                        "breed",
                        name,
                        "The breeds known are "
                                + TABLE.stream().map(Breed::name).collect(Collectors.joining(", ")),
                        "Leave it empty for average beef cattle, or name the breed nearest to it"));
    }

    private static Breed row(PublishedTable.Row row) {
        return new Breed(
                row.text("breed"),
                row.number("effect").orElseThrow(),
                row.number("birth_weight_kg").orElseThrow(),
                row.number("peak_milk_kg").orElseThrow(),
                source(row));
    }

    public static Source source(PublishedTable.Row row) {
        var cite = row.text("source");
        return switch (row.text("tier").toLowerCase(Locale.ROOT)) {
            case "read" -> Source.read(cite);
            case "judgment" -> Source.judgment(cite);
            default -> Source.memory(cite);
        };
    }
}
