package haywright.ranch;

import haywright.cattle.RequirementSystem;
import haywright.quantity.Preset;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Choices for the whole ranch.
 *
 * @param invented true for the demo: every page and paper says so
 * @param fixedToday the day the ranch is looked at, when that is not the real today; the demo has one, so that its
 *     figures stay
 * @param system which edition of the requirement equations; the default is the newer where both are whole
 * @param adviser who signs the letters; may be empty
 * @param feedingLossPercent share of what is put out that is not eaten, with the ranch's usual way of feeding
 * @param turnout the day grass is expected to carry the cows, if planned
 * @param weather null until it is said; needs are those of mild days then
 * @param herdFactor what the cold and the waste are multiplied by, since last winter said so; null where nobody has
 *     accepted one
 * @param preset the units its figures are shown and typed in; null where nobody chose, which is {@link Preset#US}
 * @param findPrice dollars by weight as fed of hay still to find; null where nobody entered one, and a usual one counts
 */
public record Settings(
        boolean invented,
        @Nullable LocalDate fixedToday,
        RequirementSystem system,
        String adviser,
        double feedingLossPercent,
        @Nullable LocalDate turnout,
        @Nullable RanchWeather weather,
        @Nullable Double herdFactor,
        @Nullable Preset preset,
        @Nullable Quantity findPrice) {
    public Settings {
        if (!(feedingLossPercent >= 0 && feedingLossPercent < 60)) {
            throw new Refused(
                    "feedingLossPercent",
                    feedingLossPercent + " %",
                    "feeding loss is 0 to under 60 %",
                    "Enter the pounds wasted of every 100 lb put out.");
        }
        if (herdFactor != null && !(herdFactor >= 0 && herdFactor <= MOST_FACTOR)) {
            throw new Refused(
                    "herdFactor",
                    herdFactor.toString(),
                    "cold and waste are multiplied by 0 to 3",
                    "Check last winter’s head, days and feed.");
        }
        if (findPrice != null && !(findPrice.base() > 0 && findPrice.base() <= MOST_FOR_HAY)) {
            throw new Refused(
                    "findPrice",
                    findPrice.toString(),
                    "hay costs more than nothing and up to $2,000 a ton",
                    "Enter dollars a ton, delivered.");
        }
        if (fixedToday != null && turnout != null && turnout.isBefore(fixedToday)) {
            throw new Refused(
                    "turnout", turnout.toString(), "turnout comes after today, " + fixedToday, "Check the year.");
        }
    }

    public static final double MOST_FACTOR = 3;
    /** Nobody pays more for a ton of hay (judgment): it is a slip of the hand. */
    private static final double MOST_FOR_HAY =
            Quantity.of(2000, Unit.DOLLAR_PER_TON).base();

    private static final double LEAST_LOSS_PERCENT = 5;
    private static final double MOST_LOSS_PERCENT = 30;

    /** Hay on the ground loses more than hay in a ring; 15 % stands until the ranch says how it feeds. */
    static final double USUAL_FEEDING_LOSS_PERCENT = 15;

    static Settings start() {
        return new Settings(
                false, null, RequirementSystem.NRC_1996, "", USUAL_FEEDING_LOSS_PERCENT, null, null, null, null, null);
    }

    /** With another weather, or with none. */
    public Settings with(@Nullable RanchWeather other) {
        return new Settings(
                invented,
                fixedToday,
                system,
                adviser,
                feedingLossPercent,
                turnout,
                other,
                herdFactor,
                preset,
                findPrice);
    }

    /** With another day of grass, or with none. */
    public Settings withTurnout(@Nullable LocalDate day) {
        return new Settings(
                invented, fixedToday, system, adviser, feedingLossPercent, day, weather, herdFactor, preset, findPrice);
    }

    /** With another who signs the letters. */
    public Settings withAdviser(String name) {
        return new Settings(
                invented,
                fixedToday,
                system,
                name,
                feedingLossPercent,
                turnout,
                weather,
                herdFactor,
                preset,
                findPrice);
    }

    /** With another share lost in feeding. */
    public Settings withFeedingLoss(double percent) {
        return new Settings(
                invented, fixedToday, system, adviser, percent, turnout, weather, herdFactor, preset, findPrice);
    }

    /** With what last winter said of cold and waste, or without. */
    public Settings withHerdFactor(@Nullable Double factor) {
        return new Settings(
                invented, fixedToday, system, adviser, feedingLossPercent, turnout, weather, factor, preset, findPrice);
    }

    /** With another price of hay still to find, or with the usual one. */
    public Settings withFindPrice(@Nullable Quantity price) {
        return new Settings(
                invented, fixedToday, system, adviser, feedingLossPercent, turnout, weather, herdFactor, preset, price);
    }

    /** With other units to read and type in. */
    public Settings withPreset(@Nullable Preset units) {
        return new Settings(
                invented,
                fixedToday,
                system,
                adviser,
                feedingLossPercent,
                turnout,
                weather,
                herdFactor,
                units,
                findPrice);
    }

    /** The units its figures are shown and typed in. */
    public Preset measures() {
        return preset == null ? Preset.US : preset;
    }

    /** What the cold and the waste are multiplied by: 1 where nobody has accepted another. */
    public double factor() {
        return herdFactor == null ? 1 : herdFactor;
    }

    /**
     * Share of the hay put out that is not eaten, with what last winter said of it.
     * <pre>
     * w' = h·x / (1 + h·x),  x = w / (1 − w)      what is left lying for each pound eaten, times h
     * </pre>
     * A factor leaves it from 5 to 30 %, or at what was typed where that lies outside: ring feeders lost 6 % (Buskirk and
     * others 2003), hay on the ground without a feeder 20 to 30 (Iowa State, Controlling Feed Loss, 2021).
     */
    public double hayLossPercent() {
        double left = factor() * feedingLossPercent / (100 - feedingLossPercent);
        return Math.max(
                Math.min(LEAST_LOSS_PERCENT, feedingLossPercent),
                Math.min(Math.max(MOST_LOSS_PERCENT, feedingLossPercent), 100 * left / (1 + left)));
    }

    public LocalDate today(LocalDate real) {
        return fixedToday == null ? real : fixedToday;
    }
}
