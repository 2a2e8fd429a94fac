package haywright.app.web.herd;

import haywright.app.report.picture.HerdPicture;
import haywright.app.report.picture.NeedPicture;
import haywright.app.report.picture.NeedPicture.Band;
import haywright.app.web.Ask;
import haywright.app.web.Page;
import haywright.app.words.HerdWords;
import haywright.app.words.Show;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.KeyDate;
import haywright.cattle.need.GroupRequirement;
import haywright.cattle.need.Need;
import haywright.diet.PoorestDiet;
import haywright.outlook.HayMeasure;
import haywright.outlook.WeeksOfNeed;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.weather.Doubt;
import haywright.weather.StationWinters;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What one head needs in the weeks from today to turnout, as one picture, its parts, and a table. Each week is the mean of
 * its days and told by its first.
 *
 * @param ends the last day that is figured
 * @param until where the pictures end, in words
 * @param says what a rancher should take from it, in a sentence
 * @param winters whose winters the band of the picture is; empty where there is none
 * @param hay that energy is measured by
 * @param hays that it could be measured by
 * @param snap null where no weather is said
 */
public record WeeksAhead(
        UUID group,
        LocalDate ends,
        String until,
        String says,
        HerdPicture picture,
        String winters,
        HayMeasure hay,
        List<HayMeasure> hays,
        List<NeedPicture> parts,
        List<Row> rows,
        boolean gains,
        @Nullable ColdSnap snap) {
    public static final Ask HAY = Ask.choice("hay", "Show in pounds of", "");

    /** Where no day of turnout is planned. */
    private static final int WITHOUT_PLAN = 26;

    private static final int MOST = 60;

    /**
     * One week of the table, in words.
     *
     * @param most NEm of nine in ten of the group
     */
    public record Row(
            String week,
            String nem,
            String most,
            String neg,
            String metabolizable,
            String protein,
            String calcium,
            String phosphorus,
            String water,
            String eats,
            String tdn) {}

    /** Null where nothing can be worked out; the page says why elsewhere. */
    static @Nullable WeeksAhead of(Page page, Group group) {
        var today = page.today();
        var settings = page.ranch().settings();
        var turnout = group.turnout() == null ? settings.turnout() : group.turnout();
        var planned = Optional.ofNullable(turnout).filter(day -> day.isAfter(today.plusWeeks(1)));
        var end = planned.orElse(today.plusWeeks(WITHOUT_PLAN));
        int weeks = (int) Math.min(MOST, ChronoUnit.WEEKS.between(today, end) + 1);
        WeeksOfNeed ahead;
        try {
            ahead = WeeksOfNeed.of(page.ranch(), group, today, weeks);
        } catch (Refused refused) {
            return null;
        }
        var dates = ahead.begins();
        var needs = ahead.usual();
        var hays = HayMeasure.of(page.yard());
        var hay = hays.stream()
                .filter(one -> one.id().equals(page.http().queryParam(HAY.name())))
                .findFirst()
                .orElse(hays.get(0));
        var diets = needs.stream().map(PoorestDiet::of).toList();
        var rows = new ArrayList<Row>();
        for (int week = 0; week < dates.size(); week++) {
            rows.add(row(dates.get(week), needs.get(week), diets.get(week).orElse(null)));
        }
        return new WeeksAhead(
                group.id(),
                dates.get(dates.size() - 1).plusDays(6),
                planned.isPresent() ? "to turnout on " + Show.date(end) : "for 26 weeks, since " + why(turnout, today),
                says(
                                dates,
                                diets.get(0).orElse(null),
                                diets.stream().map(diet -> diet.orElse(null)).toList())
                        + tooMuch(dates, needs, diets, hay),
                picture(ahead, hay, KeyDate.of(group, turnout)),
                winters(page.ranch()),
                hay,
                hays,
                parts(dates, needs, diets),
                rows,
                needs.stream().anyMatch(need -> need.neg() > 0),
                ColdSnap.of(settings, group, today, hay));
    }

    private static String why(@Nullable LocalDate turnout, LocalDate today) {
        return turnout == null
                ? "no turnout date is set"
                : "the turnout date, %s, is %s".formatted(Show.date(turnout), turnout.isAfter(today) ? "near" : "past");
    }

    /** Whose winters the band is; empty where none is known. */
    private static String winters(Ranch ranch) {
        var weather = ranch.settings().weather();
        var winters = ranch.knownWinters();
        if (weather == null || winters.isEmpty()) {
            return "";
        }
        if (winters.size() < StationWinters.ENOUGH) {
            return "Too few whole winters on record to show a hard one.";
        }
        int last = winters.get(winters.size() - 1).year();
        var record = ranch.winters();
        var whose = weather.found() != null
                ? "estimated for %s, to %d; half the test stations were within %s %% of the measured cold"
                        .formatted(weather.place(), last, Show.number(100 * Doubt.OF_A_PLACE.middle(), 0))
                : record != null && record.drawn()
                        ? "simulated from " + record.station()
                        : "at %s, to %d".formatted(weather.place(), last);
        return "Hatched: the range of 16 of 20 winters, from %s winters %s; 2 take more, 2 less. Thick line: the usual cold."
                .formatted(Show.number(winters.size(), 0), whose);
    }

    private static HerdPicture picture(WeeksOfNeed ahead, HayMeasure hay, List<KeyDate> dates) {
        var weeks = new ArrayList<HerdPicture.Week>();
        for (int i = 0; i < ahead.begins().size(); i++) {
            var need = ahead.usual().get(i);
            double gain = need.neg() > 0 ? hay.forGain(need.neg()) : 0;
            weeks.add(new HerdPicture.Week(
                    ahead.begins().get(i),
                    Unit.POUND.fromBase(hay.of(ahead.mild().get(i))),
                    Unit.POUND.fromBase(hay.of(need)),
                    ahead.mild(i).map(nem -> Unit.POUND.fromBase(hay.forMaintenance(nem) + gain)),
                    ahead.hard(i).map(nem -> Unit.POUND.fromBase(hay.forMaintenance(nem) + gain))));
        }
        return new HerdPicture(
                "lb of " + hay.name(),
                weeks,
                dates.stream()
                        .map(date -> new HerdPicture.Mark(date.on(), date.what().words()))
                        .toList());
    }

    private static List<NeedPicture> parts(
            List<LocalDate> dates, List<GroupRequirement> needs, List<Optional<PoorestDiet>> diets) {
        var pictures = new ArrayList<NeedPicture>();
        pictures.add(new NeedPicture(
                "nem",
                "Energy (NEm)",
                "Mcal",
                1,
                dates,
                List.of(
                        new Band(
                                "for maintenance on a mild day",
                                values(needs, need -> need.nemMaintenance() - need.nemAcclimatization())),
                        new Band("for the unborn calf", values(needs, Need::nemPregnancy)),
                        new Band("for milk", values(needs, Need::nemLactation)),
                        new Band("for the cold of the month before", values(needs, Need::nemAcclimatization)),
                        new Band("for the cold", values(needs, Need::nemCold)),
                        new Band("to regain condition", values(needs, Need::nemRegain)))));
        pictures.add(new NeedPicture(
                "neg", "Energy for gain (NEg)", "Mcal", 1, dates, List.of(new Band("", values(needs, Need::neg)))));
        pictures.add(new NeedPicture(
                "protein",
                "Crude protein",
                "lb",
                1,
                dates,
                List.of(new Band(
                        "",
                        IntStream.range(0, needs.size())
                                .mapToObj(
                                        i -> Unit.POUND.fromBase(NeedFigures.crudeProtein(needs.get(i), diets.get(i))))
                                .toList()))));
        pictures.removeIf(picture -> picture.bands().isEmpty());
        return pictures;
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
                return "No diet is enough for the gain set.";
            }
            hardest = one.tdn() > most.tdn() ? week : hardest;
        }
        var then = diets.get(hardest);
        if (now == null || then == null) {
            return "No diet is enough for the gain set.";
        }
        var first = "They hold on %s TDN and %s protein (dry matter basis) now"
                .formatted(whole(now.tdn()), whole(now.crudeProteinPercent()));
        return hardest == 0 || then.tdn() - now.tdn() < 1
                ? first + " and until then."
                : first
                        + "; by the week of %s they need %s TDN and %s protein."
                                .formatted(
                                        Show.day(dates.get(hardest)).replace(' ', '\u00a0'),
                                        whole(then.tdn()),
                                        whole(then.crudeProteinPercent()));
    }

    /**
     * Where the energy takes more of this hay than they are expected to eat, by the intake of the table and all its doubt, in
     * words; else empty.
     */
    static String tooMuch(
            List<LocalDate> dates, List<GroupRequirement> needs, List<Optional<PoorestDiet>> diets, HayMeasure hay) {
        for (int week = 0; week < dates.size(); week++) {
            var need = needs.get(week);
            var diet = diets.get(week).orElse(null);
            double takes = need.nem() / hay.nem() + (need.neg() > 0 ? need.neg() / hay.neg() : 0);
            if (diet != null && HerdWords.isMoreThanEaten(takes, diet.kilograms())) {
                return " In the week of %s that is %s lb of dry matter of %s; they eat %s. Add a better feed."
                        .formatted(
                                Show.day(dates.get(week)).replace(' ', '\u00a0'),
                                Show.number(Unit.POUND.fromBase(takes), 0),
                                hay.name(),
                                HerdWords.eats(diet.kilograms()));
            }
        }
        return "";
    }

    private static String whole(double percent) {
        return Show.number(percent, 0) + " %";
    }

    private static Row row(LocalDate week, GroupRequirement need, @Nullable PoorestDiet diet) {
        return new Row(
                Show.date(week),
                Show.number(need.nem(), 1),
                NeedFigures.band(need.spread(Need::nem), mcal -> Show.number(mcal, 1)),
                Show.number(need.neg(), 1),
                Show.number(need.metabolizableProtein(), 0),
                NeedFigures.crudeProteinSays(need, Optional.ofNullable(diet)).replace(" lb", ""),
                Show.number(need.calcium(), 0),
                Show.number(need.phosphorus(), 0),
                Show.number(Unit.GALLON.fromBase(need.water() / 1000), 1),
                diet == null ? "none" : Show.number(Unit.POUND.fromBase(diet.kilograms()), 0),
                diet == null ? "none" : Show.number(diet.tdn(), 0));
    }
}
