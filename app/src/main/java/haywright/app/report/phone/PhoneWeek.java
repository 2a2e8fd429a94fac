package haywright.app.report.phone;

import haywright.app.report.Paper;
import java.util.List;

/**
 * A week as one HTML file for a phone that needs no signal: pounds fed each day, scores, bales or tons of each lot.
 *
 * @param code of the sheet, which changes with the groups and lots on it
 * @param made when and for which ranch, in words
 */
public record PhoneWeek(String code, String made, List<OfGroup> groups, List<OfLot> lots) {
    /** Days that there is a box for, and then one for the score. */
    public static final int DAYS = 7;

    /** Boxes of a lot: fed, left, not eaten. */
    public static final int OF_A_LOT = 3;

    public PhoneWeek {
        groups = List.copyOf(groups);
        lots = List.copyOf(lots);
    }

    /** @param today what its wagon card loads now, in words; empty where it has none */
    public record OfGroup(String name, String today) {}

    /** @param unit what it is counted in */
    public record OfLot(String name, String unit) {}

    public String page() {
        return Paper.text("haywright/app/report/phone/phoneWeek.jte", this);
    }
}
