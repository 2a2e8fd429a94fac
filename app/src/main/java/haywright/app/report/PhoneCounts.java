package haywright.app.report;

import java.util.List;

/**
 * A sheet for weights or scores as one HTML file for a phone that needs no signal.
 *
 * @param code of the sheet
 * @param scale what a number is multiplied by on the line that goes back: 10 for halves of a score
 * @param rows one number each, in words
 */
public record PhoneCounts(
        String title,
        String code,
        String about,
        String say,
        String unit,
        int scale,
        List<String> rows,
        String caution) {
    String page() {
        return Paper.text("haywright/app/report/phoneCounts.jte", this);
    }
}
