package haywright.app.web.herd;

import haywright.app.report.NeedPicture;
import haywright.app.report.NeedPicture.Band;
import haywright.app.web.Page;
import haywright.app.words.Show;
import haywright.cattle.Group;
import haywright.cattle.GroupRequirement;
import haywright.cattle.Need;
import haywright.diet.PoorestDiet;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * What one head needs in the weeks from today to grass, as pictures and as a table. Each week is told by its first day.
 *
 * @param until where the pictures end, in words
 * @param says what a rancher should take from it, in a sentence
 * @param snap null where no weather is said
 */
public record WeeksAhead(
        String until,
        String says,
        List<NeedPicture> pictures,
        List<Row> rows,
        boolean gains,
        @Nullable ColdSnap snap) {
    /** Where no day of turnout is planned. */
    private static final int WITHOUT_PLAN = 26;

    private static final int MOST = 60;

    /** One week of the table, in words. */
    public record Row(
            String week,
            String nem,
            String neg,
            String protein,
            String calcium,
            String phosphorus,
            String eats,
            String tdn) {}

    /** Null where nothing can be worked out; the page says why elsewhere. */
    static @Nullable WeeksAhead of(Page page, Group group) {
        var today = page.today();
        var settings = page.ranch().settings();
        var planned = Optional.ofNullable(group.turnout())
                .or(() -> Optional.ofNullable(settings.turnout()))
                .filter(day -> day.isAfter(today.plusWeeks(1)));
        var end = planned.orElse(today.plusWeeks(WITHOUT_PLAN));
        var dates = new ArrayList<LocalDate>();
        var needs = new ArrayList<GroupRequirement>();
        try {
            for (var date = today; !date.isAfter(end) && dates.size() < MOST; date = date.plusWeeks(1)) {
                dates.add(date);
                needs.add(settings.need(group, date));
            }
        } catch (Refused refused) {
            return null;
        }
        var pictures = new ArrayList<NeedPicture>();
        pictures.add(new NeedPicture(
                "nem",
                "Energy (NEm)",
                "Mcal",
                1,
                dates,
                List.of(
                        new Band("to stay alive", values(needs, Need::nemMaintenance)),
                        new Band("for the calf in her", values(needs, Need::nemPregnancy)),
                        new Band("for milk", values(needs, Need::nemLactation)),
                        new Band("for the cold", values(needs, Need::nemCold)))));
        pictures.add(new NeedPicture(
                "neg", "Energy for gain (NEg)", "Mcal", 1, dates, List.of(new Band("", values(needs, Need::neg)))));
        pictures.add(new NeedPicture(
                "protein",
                "Crude protein",
                "lb",
                1,
                dates,
                List.of(new Band("", values(needs, need -> Unit.POUND.fromBase(need.crudeProtein()))))));
        pictures.removeIf(picture -> picture.bands().isEmpty());
        var diets = needs.stream().map(PoorestDiet::of).toList();
        var rows = new ArrayList<Row>();
        for (int week = 0; week < dates.size(); week++) {
            rows.add(row(dates.get(week), needs.get(week), diets.get(week).orElse(null)));
        }
        return new WeeksAhead(
                planned.isPresent() ? "to grass on " + Show.date(end) : "for 26 weeks, since no day of turnout is set",
                says(
                        dates,
                        diets.get(0).orElse(null),
                        diets.stream().map(diet -> diet.orElse(null)).toList()),
                pictures,
                rows,
                needs.stream().anyMatch(need -> need.neg() > 0),
                ColdSnap.of(settings, group, today));
    }

    private static List<Double> values(List<GroupRequirement> needs, ToDoubleFunction<Need> of) {
        return needs.stream().map(of::applyAsDouble).toList();
    }

    private static String says(List<LocalDate> dates, @Nullable PoorestDiet now, List<@Nullable PoorestDiet> diets) {
        int hardest = 0;
        for (int week = 0; week < diets.size(); week++) {
            var one = diets.get(week);
            var most = diets.get(hardest);
            if (one == null || most == null) {
                return "No diet carries the gain that is wanted.";
            }
            hardest = one.tdn() > most.tdn() ? week : hardest;
        }
        var then = diets.get(hardest);
        if (now == null || then == null) {
            return "No diet carries the gain that is wanted.";
        }
        var first = "Feed of %s TDN and %s protein carries them now"
                .formatted(whole(now.tdn()), whole(now.crudeProteinPercent()));
        return hardest == 0 || then.tdn() - now.tdn() < 1
                ? first + " and until then."
                : first
                        + "; by the week of %s it takes %s TDN and %s protein."
                                .formatted(
                                        Show.day(dates.get(hardest)).replace(' ', '\u00a0'),
                                        whole(then.tdn()),
                                        whole(then.crudeProteinPercent()));
    }

    private static String whole(double percent) {
        return Show.number(percent, 0) + " %";
    }

    private static Row row(LocalDate week, Need need, @Nullable PoorestDiet diet) {
        return new Row(
                Show.date(week),
                Show.number(need.nem(), 1),
                Show.number(need.neg(), 1),
                Show.number(Unit.POUND.fromBase(need.crudeProtein()), 2),
                Show.number(need.calcium(), 0),
                Show.number(need.phosphorus(), 0),
                diet == null ? "none" : Show.number(Unit.POUND.fromBase(diet.kilograms()), 0),
                diet == null ? "none" : Show.number(diet.tdn(), 0));
    }
}
