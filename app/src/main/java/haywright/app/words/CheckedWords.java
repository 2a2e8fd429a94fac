package haywright.app.words;

import haywright.diet.CheckedNeed;
import haywright.quantity.Unit;

/** Needs that are held against a mix and decide nothing, in words. */
public final class CheckedWords {
    private CheckedWords() {}

    /** {@code 0.12 %}, {@code 1,270 IU/lb}: of the dry matter of all they eat. */
    public static String share(double share, Unit unit) {
        return switch (unit) {
            case IU_PER_KG -> Show.withUnit(Show.significant(Unit.IU_PER_LB.fromBase(share), 3), Unit.IU_PER_LB);
            case PERCENT -> Show.withUnit(Show.significant(share, 2), unit);
            default -> Show.withUnit(Show.significant(share, 3), unit);
        };
    }

    /** {@code 0.18 %}; {@code 5.1 % to 7.9 %} where a feed has no figure. */
    public static String supplied(CheckedNeed need) {
        var least = share(need.least(), need.unit());
        if (Double.isInfinite(need.most())) {
            return need.least() > 0 ? "at least " + least : "not counted";
        }
        var most = share(need.most(), need.unit());
        return least.equals(most) ? least : least + " to " + most;
    }

    /** What comes of it, and what to do. */
    public static String says(CheckedNeed need) {
        return switch (need.verdict()) {
            case MET -> "Met.";
            case SHORT -> "Short by %s. %s".formatted(share(need.needed() - need.most(), need.unit()), mends(need));
            case UNTESTED ->
                need.id().equals("vitamin_a")
                        ? mends(need)
                        : "Not known: no figure for %s. %s".formatted(String.join(", ", need.unknown()), mends(need));
        };
    }

    private static String mends(CheckedNeed need) {
        return switch (need.id()) {
            case "mg" -> "The mineral has to bring what is missing: hold its tag against this.";
            case "rdp" -> "Oilseed meal, alfalfa or distillers grains bring it.";
            default ->
                "A mineral with vitamin A or an injection brings it. Hay loses it: after a year in the stack count on none.";
        };
    }
}
