package haywright.forage.lab;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.Say;
import haywright.forage.lab.Tested.Method;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a report says of an analyte in place of a figure. It is never taken for a figure, and never for zero: a "less
 * than" is a bound, "not detected" a bound that may not be printed, "not tested" nothing at all.
 *
 * @param limit what the laboratory could still have told from nothing, in {@code unit}; null where it is not printed
 * @param unit null where there is no limit
 * @param basis of the limit; null where there is none, or where the analyte has one figure whatever the basis
 * @param method how it was looked for, where the sheet says so of this one; null where as the whole report was
 */
public record NotMeasured(
        Analyte analyte,
        Why why,
        @Nullable Double limit,
        @Nullable Unit unit,
        @Nullable Basis basis,
        @Nullable Method method) {
    /** What kills or sickens: not knowing it is no reason to count on none. */
    private static final Set<Analyte> DANGERS = EnumSet.of(
            Analyte.NO3,
            Analyte.NO3N,
            Analyte.KNO3,
            Analyte.HCN,
            Analyte.AFLATOXIN,
            Analyte.DON,
            Analyte.FUMONISIN,
            Analyte.ZEA,
            Analyte.T2,
            Analyte.ERGOT,
            Analyte.SO4W);

    private static final Set<Analyte> NITRATE = EnumSet.of(Analyte.NO3, Analyte.NO3N, Analyte.KNO3);

    /**
     * What a nitrate test that found nothing is taken to have been able to find, ppm NO3-N on dry matter, where its own limit
     * is not printed: by judgment, since laboratories take two results within 100 ppm for the same. Other tests have no usual
     * limit here.
     */
    public static final double USUAL_NITRATE_LIMIT_PPM = 100;

    /** Looked for as the whole report was. */
    public NotMeasured(Analyte analyte, Why why, @Nullable Double limit, @Nullable Unit unit, @Nullable Basis basis) {
        this(analyte, why, limit, unit, basis, null);
    }

    public NotMeasured {
        if (why == Why.LESS_THAN && limit == null) {
            throw new Refused(
                    "limit", "nothing", "“less than” has a limit", "Enter the figure behind it, or “not detected”.");
        }
        if (limit != null && (why == Why.NOT_TESTED || unit == null || !(limit > 0))) {
            throw new Refused(
                    "limit",
                    Say.number(limit),
                    why == Why.NOT_TESTED
                            ? "what was not tested has no limit"
                            : "a limit of detection is above zero and has a unit",
                    "Is this what the report prints?");
        }
        if (unit != null && unit.kind() != analyte.unit().kind()) {
            throw new Refused(
                    "unit",
                    unit.symbol(),
                    "%s is not measured in it".formatted(analyte.words()),
                    "Is the unit %s?".formatted(analyte.unit().symbol()));
        }
        if (limit != null && analyte.hasBasis() && basis == null) {
            throw new Refused(
                    "basis",
                    "nothing",
                    analyte.words() + " has one limit as received and another on dry matter",
                    "Say which column it stood in.");
        }
    }

    /** What a report writes where a figure would stand. */
    public enum Why {
        LESS_THAN("less than"),
        NOT_DETECTED("not detected"),
        NOT_TESTED("not tested");

        private final String words;

        Why(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** The same, with how it was looked for. */
    public NotMeasured by(@Nullable Method how) {
        return new NotMeasured(analyte, why, limit, unit, basis, how);
    }

    boolean isSameDanger(Analyte other) {
        return other == analyte || NITRATE.contains(other) && NITRATE.contains(analyte);
    }

    /** Whether too much of this analyte is a danger to cattle. */
    public boolean isDanger() {
        return DANGERS.contains(analyte);
    }

    /**
     * The limit as a figure, for a danger only: where nobody knows how much less it is, the limit itself counts, which
     * is the stricter way.
     */
    public Optional<Reading> counted() {
        return isDanger() ? asLimit() : Optional.empty();
    }

    /** Limits that are printed before those that are only usual, and on dry matter before those to be carried there. */
    static List<NotMeasured> printedFirst(List<NotMeasured> all) {
        return all.stream()
                .sorted(Comparator.comparing(NotMeasured::isUsualLimitTaken)
                        .thenComparing(one -> one.basis != null && one.basis != Basis.DRY_MATTER))
                .toList();
    }

    /** Whether nothing was found, the limit is not printed, and {@link #USUAL_NITRATE_LIMIT_PPM} stands for it. */
    public boolean isUsualLimitTaken() {
        return why == Why.NOT_DETECTED && limit == null && NITRATE.contains(analyte);
    }

    /** The limit as a figure, to be carried to dry matter; empty where none is printed and none is usual. */
    Optional<Reading> asLimit() {
        if (isUsualLimitTaken()) {
            return Optional.of(new Reading(Analyte.NO3N, USUAL_NITRATE_LIMIT_PPM, Unit.PPM, Basis.DRY_MATTER, method));
        }
        return limit != null && unit != null
                ? Optional.of(new Reading(analyte, limit, unit, basis == null ? Basis.DRY_MATTER : basis, method))
                : Optional.empty();
    }
}
