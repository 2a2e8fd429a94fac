package haywright.season.kept;

import haywright.season.given.Season;
import haywright.season.play.Played;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What happened in one winter, the first time it was played. All kg are as fed.
 *
 * @param winter {@code 1996-97}
 * @param bought dollars for feed
 * @param sold dollars for feed
 * @param emergencyKg of hay beyond all that was on hand and for sale
 * @param stormShortKg of dry matter that the storm reserve was short of at the worst
 * @param late days that grass came late
 * @param shortFrom from when either was; null for never
 * @param dollars paid for feed in each week
 */
public record WinterStory(
        String winter,
        boolean lasted,
        double bought,
        double sold,
        double emergencyKg,
        double stormShortKg,
        int late,
        @Nullable LocalDate shortFrom,
        List<Score> scores,
        List<Line> lots,
        List<Bought> buys,
        List<Double> dollars) {
    private static final double HUNDRED = 100;

    public WinterStory {
        scores = List.copyOf(scores);
        lots = List.copyOf(lots);
        buys = List.copyOf(buys);
        dollars = List.copyOf(dollars);
    }

    /** Condition at the first calving. @param wanted the score they should calve at */
    public record Score(String group, double score, double wanted) {}

    /** A lot. @param kg on hand at the start of each week, as it is believed then. @param usedUp null where it lasted */
    public record Line(
            String feed,
            String name,
            List<Double> kg,
            @Nullable LocalDate usedUp) {}

    public record Bought(LocalDate week, String name, boolean isEmergency, double kg) {}

    public static WinterStory of(Played played, Season season) {
        var weeks = played.weeks();
        var lots = new ArrayList<Line>();
        var buys = new ArrayList<Bought>();
        for (int f = 0; f < season.feeds().size(); f++) {
            int feed = f;
            var of = season.feeds().get(f);
            if (of.kg() > 0 && season.mayBeFed(f)) {
                lots.add(new Line(
                        of.id(),
                        of.name(),
                        weeks.stream()
                                .map(week -> KeptPlan.kg(week.known().stock()[feed]))
                                .toList(),
                        played.runsOut()[f] < 0 ? null : season.begins(played.runsOut()[f] + 1)));
            }
        }
        IntStream.range(0, weeks.size()).forEach(w -> {
            for (int f = 0; f < season.feeds().size(); f++) {
                var of = season.feeds().get(f);
                double kg = weeks.get(w).boughtKg()[f];
                if (kg >= 1 && (of.isTracked() || of.isEmergency())) {
                    buys.add(new Bought(season.begins(w), of.name(), of.isEmergency(), KeptPlan.kg(kg)));
                }
            }
        });
        var scores = new ArrayList<Score>();
        for (int e = 0; e < season.eaters().size(); e++) {
            var body = season.eaters().get(e).body();
            double score = played.calvingScores()[e];
            if (body.isPresent() && !Double.isNaN(score)) {
                scores.add(new Score(
                        season.name(e),
                        Math.round(score * HUNDRED) / HUNDRED,
                        body.get().target()));
            }
        }
        return new WinterStory(
                season.record().winters().get(played.winter()).words(),
                played.lasted(),
                played.bought(),
                played.sold(),
                KeptPlan.kg(played.emergencyKg()),
                KeptPlan.kg(played.stormShortKg()),
                played.late(),
                played.shortFrom() < 0 ? null : season.begins(played.shortFrom()),
                scores,
                lots,
                buys,
                weeks.stream()
                        .map(week -> Math.round(week.dollars() * HUNDRED) / HUNDRED)
                        .toList());
    }
}
