package haywright.cattle.cold;

import haywright.cattle.Animal;
import haywright.workings.Source;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * The hair an animal wears on a day: a class of the tables, or on the way from one to the next.
 *
 * @param lighter and {@code heavier}: the two classes it lies between
 * @param share of the way from the lighter to the heavier, 0 to 1
 */
public record HairCoat(Coat lighter, Coat heavier, double share) {
    /** Class on the 15th of January to December, by {@link Coat#ordinal()}. */
    private static final int[] MID_MONTH = {3, 3, 3, 2, 1, 0, 0, 0, 0, 1, 2, 3};

    private static final int MIDDLE = 15;

    static final Source SEASON = Source.judgment("the heavy coat is grown by December 15 and kept to March 15, shed by"
            + " June 15 and grown again from September 15, evenly in between; the tables name no month");

    /** One class of the tables. */
    public static HairCoat of(Coat coat) {
        return new HairCoat(coat, coat, 0);
    }

    /**
     * The heaviest coat of a day of the year in cold country: heavy from December 15 to March 15, the winter class on
     * November 15 and April 15, fall on October 15 and May 15, summer from June 15 to September 15, and evenly from one to
     * the next. Judgment: the tables name no month. Hair had doubled by February on heifers kept outdoors (Webster, Chlumecky
     * and Young 1970, abstract read).
     */
    public static HairCoat usual(LocalDate date) {
        var last = date.getDayOfMonth() < MIDDLE
                ? date.minusMonths(1).withDayOfMonth(MIDDLE)
                : date.withDayOfMonth(MIDDLE);
        var next = last.plusMonths(1);
        double way = ChronoUnit.DAYS.between(last, date) / (double) ChronoUnit.DAYS.between(last, next);
        int from = MID_MONTH[last.getMonthValue() - 1];
        int to = MID_MONTH[next.getMonthValue() - 1];
        var now = Coat.values()[from];
        var then = Coat.values()[to];
        if (from == to || way == 0) {
            return of(now);
        }
        return from < to ? new HairCoat(now, then, way) : new HairCoat(then, now, 1 - way);
    }

    /**
     * What an animal wears of it where is not entered: dry cattle in score 5 or better all, others no more than the winter
     * class, one under the heavy coat. In spring and fall all wear that of the day.
     */
    HairCoat of(Animal animal) {
        boolean whole = animal.lactation() == null && animal.conditionScore() >= LowerCritical.AVERAGE;
        return whole || heavier != Coat.HEAVY_WINTER ? this : of(Coat.WINTER);
    }

    /** Of one of the classes. */
    boolean isPrinted() {
        return lighter == heavier;
    }

    double between(double ofLighter, double ofHeavier) {
        return ofLighter + (ofHeavier - ofLighter) * share;
    }

    /** Effective depth in the heat balance, cm: {@link Coat#hair}. */
    public double hair() {
        return between(lighter.hair(), heavier.hair());
    }
}
