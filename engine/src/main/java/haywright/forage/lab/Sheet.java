package haywright.forage.lab;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.BasisConversion;
import haywright.forage.FeedClass;
import haywright.forage.Say;
import haywright.forage.book.FeedBook;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * A report on its way to dry matter: what the rules look at.
 *
 * @param readings as typed
 * @param values on dry matter, in each analyte's unit
 * @param issues what was found while carrying it there
 */
public record Sheet(
        FeedClass feedClass,
        Optional<FeedBook.Row> book,
        List<Reading> readings,
        Map<Analyte, Double> values,
        List<Issue> issues) {
    /** Urea counts as protein far above 100 %: 281 to 288 in the feed book. */
    private static final double MOST_PROTEIN_OF_NPN = 300;

    static Sheet of(FeedClass feedClass, Optional<FeedBook.Row> book, List<Reading> readings) {
        var values = new EnumMap<Analyte, Double>(Analyte.class);
        var issues = new ArrayList<Issue>();
        var usable = new ArrayList<Reading>();
        for (var reading : readings) {
            var issue = unusable(feedClass, reading);
            if (issue == null) {
                usable.add(reading);
            } else {
                issues.add(issue);
            }
        }
        if (usable.stream().filter(r -> isWater(r.analyte())).count() > 1) {
            usable.removeIf(BasisRules::isDryColumn);
        }
        var dryMatter = dryMatter(usable);
        dryMatter.ifPresent(dm -> values.put(Analyte.DM, dm));
        for (var reading : usable) {
            carry(feedClass, reading, dryMatter, values, issues);
        }
        return new Sheet(feedClass, book, List.copyOf(usable), values, issues);
    }

    private static boolean isWater(Analyte analyte) {
        return analyte == Analyte.DM || analyte == Analyte.MOISTURE;
    }

    /** Dry matter as printed, or what moisture leaves; the first figure counts. */
    private static OptionalDouble dryMatter(List<Reading> readings) {
        for (var reading : readings) {
            if (reading.analyte() == Analyte.DM) {
                return OptionalDouble.of(inHouseUnit(reading));
            }
        }
        for (var reading : readings) {
            if (reading.analyte() == Analyte.MOISTURE) {
                return OptionalDouble.of(100 - inHouseUnit(reading));
            }
        }
        return OptionalDouble.empty();
    }

    private static void carry(
            FeedClass feedClass,
            Reading reading,
            OptionalDouble dryMatter,
            Map<Analyte, Double> values,
            List<Issue> issues) {
        var analyte = reading.analyte();
        if (analyte == Analyte.DM) {
            return;
        }
        double value = inHouseUnit(reading);
        if (analyte.hasBasis() && reading.basis() == Basis.AS_RECEIVED) {
            if (dryMatter.isEmpty()) {
                issues.add(Issue.error(
                        "dry-matter",
                        analyte,
                        "%s is given as received, and the report has no dry matter to convert it with"
                                .formatted(analyte.words()),
                        "Enter the dry matter or the moisture, or the figure on dry matter."));
                return;
            }
            value = BasisConversion.onDryMatter(value, reading.basis(), dryMatter.getAsDouble());
            if (!possible(feedClass, analyte).holds(value)) {
                issues.add(outOfRange(feedClass, reading, analyte, value, " on dry matter"));
                return;
            }
            values.putIfAbsent(analyte, value);
        } else if (analyte.hasBasis() && reading.basis() == Basis.NINETY_PCT) {
            values.putIfAbsent(analyte, BasisConversion.onDryMatter(value, reading.basis(), 90));
        } else {
            values.put(analyte, value); // printed on dry matter: better than carried there
        }
    }

    public static double inHouseUnit(Reading reading) {
        return reading.unit().to(reading.analyte().unit(), reading.value());
    }

    private static @Nullable Issue unusable(FeedClass feedClass, Reading reading) {
        var analyte = reading.analyte();
        if (!Double.isFinite(reading.value())) {
            return Issue.error(
                    "number",
                    analyte,
                    "%s is %s".formatted(analyte.words(), Say.number(reading.value())),
                    "Enter the figure as printed, or leave it out.");
        }
        if (reading.unit().kind() != analyte.unit().kind()) {
            return Issue.error(
                    "unit",
                    analyte,
                    "%s is not measured in %s"
                            .formatted(analyte.words(), reading.unit().symbol()),
                    "Is the unit one of %s?".formatted(units(analyte)));
        }
        double value = inHouseUnit(reading);
        if (analyte == Analyte.DM && !(value > 0 && value <= 100) || analyte == Analyte.MOISTURE && value >= 100) {
            return Issue.error(
                    "range",
                    analyte,
                    "%s is %s %%: dry matter is above 0 and at most 100 %% of the feed as received"
                            .formatted(analyte.words(), Say.number(value)),
                    "Are dry matter and moisture swapped, or left out?");
        }
        return possible(feedClass, analyte).holds(value) ? null : outOfRange(feedClass, reading, analyte, value, "");
    }

    private static Issue outOfRange(FeedClass feedClass, Reading reading, Analyte analyte, double value, String where) {
        var possible = possible(feedClass, analyte);
        return Issue.error(
                "range",
                analyte,
                "%s is %s%s: it is from %s to %s"
                        .formatted(
                                analyte.words(),
                                Say.with(value, analyte.unit()),
                                where,
                                Say.number(possible.low()),
                                Say.with(possible.high(), analyte.unit())),
                value < 0
                        ? "Is there a minus too many?"
                        : otherUnit(reading)
                                .map(unit -> "Is the unit %s?".formatted(unit.symbol()))
                                .or(() -> Slip.of(feedClass, analyte, value)
                                        .map(slip -> "Is it %s?".formatted(Say.with(slip.likely(), analyte.unit()))))
                                .orElse("Is %s what the report says, in that unit?"
                                        .formatted(Say.with(reading.value(), reading.unit()))));
    }

    /** Energy is printed in four units, and a figure far too high in one is usual in another. */
    private static Optional<Unit> otherUnit(Reading reading) {
        var analyte = reading.analyte();
        return analyte.unit().kind() == Kind.ENERGY_DENSITY
                ? analyte.accepts().stream()
                        .filter(unit -> unit != reading.unit()
                                && analyte.possible().holds(unit.to(analyte.unit(), reading.value())))
                        .findFirst()
                : Optional.empty();
    }

    private static Analyte.Range possible(FeedClass feedClass, Analyte analyte) {
        var possible = analyte.possible();
        boolean npn = feedClass == FeedClass.NPN || feedClass == FeedClass.MINERAL;
        return npn && analyte == Analyte.CP ? new Analyte.Range(possible.low(), MOST_PROTEIN_OF_NPN) : possible;
    }

    private static String units(Analyte analyte) {
        return String.join(", ", analyte.accepts().stream().map(Unit::symbol).toList());
    }

    boolean has(Analyte... analytes) {
        for (var analyte : analytes) {
            if (!values.containsKey(analyte)) {
                return false;
            }
        }
        return true;
    }

    /** The figure on dry matter; ask {@link #has} first. */
    double get(Analyte analyte) {
        var value = values.get(analyte);
        if (value == null) {
            throw new IllegalStateException("the sheet has no " + analyte);
        }
        return value;
    }

    OptionalDouble value(Analyte analyte) {
        var value = values.get(analyte);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    double or(Analyte analyte, double otherwise) {
        return values.getOrDefault(analyte, otherwise);
    }

    /** "crude protein 18.5 %" */
    String say(Analyte analyte) {
        return analyte.words() + " " + Say.with(get(analyte), analyte.unit());
    }
}
