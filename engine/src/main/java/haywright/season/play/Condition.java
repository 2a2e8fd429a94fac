package haywright.season.play;

import haywright.season.given.Eater;
import haywright.season.given.Facts;
import haywright.season.given.Season;

/**
 * What a week's energy over or under the need does to condition.
 *
 * @param perHead Mcal of reserve gained; below zero where lost
 * @param guarded Mcal a head of it that were lost in the days in which losing counts
 * @param missed Mcal of NEm of all head that not even reserves brought
 */
public record Condition(double perHead, double guarded, double missed) {
    /** @param over Mcal of NEm of all head above their need; below zero where short */
    public static Condition change(Eater eater, int week, int days, double over) {
        var body = eater.body().orElseThrow();
        if (over >= 0) {
            return new Condition(Math.min(over / eater.head(), body.most(days)), 0, 0);
        }
        double replaces = Facts.value("lost_mcal");
        double wanted = -over / eater.head() / replaces;
        double guardedDays = body.guarded(Season.DAYS_A_WEEK * week, days);
        double free = Math.min(wanted, body.most(days - guardedDays));
        double guarded = Math.min(wanted - free, body.most(guardedDays));
        return new Condition(-free - guarded, guarded, (wanted - free - guarded) * replaces * eater.head());
    }
}
