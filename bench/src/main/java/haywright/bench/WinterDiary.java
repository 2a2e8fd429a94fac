package haywright.bench;

import haywright.app.document.TinLantern;
import haywright.feeding.Rations;
import haywright.feeding.SeasonByRations;
import haywright.quantity.Unit;
import haywright.season.given.Forecast;
import haywright.season.given.Season;
import haywright.season.play.Blocks;
import haywright.season.play.Judge;
import haywright.season.play.Planner;
import haywright.season.play.Replanned;
import haywright.season.play.Truth;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** One winter of the demo week by week, as the table of docs/a-winter-week-by-week.md. */
public final class WinterDiary {
    private static final long SEED = 11;
    private static final double HARDNESS = 0.8;
    private static final double TELL_TONS = 0.5;

    private WinterDiary() {}

    public static void main(String[] arguments) {
        Locale.setDefault(Locale.ROOT);
        var ranch = TinLantern.ranch();
        var season = SeasonByRations.of(new Rations(ranch, ranch.settings().today(LocalDate.EPOCH)));
        var wanted = arguments.length == 0 ? "1996-97" : arguments[0];
        int winter = 0;
        for (int w = 0; w < season.record().size(); w++) {
            winter = season.record().winters().get(w).words().equals(wanted) ? w : winter;
        }
        var forecast = new Forecast(season, winter);
        var truth = Truth.drawn(season, winter, SEED);
        try (var policy = new Replanned(
                season, forecast, List.of(HARDNESS), new Planner(new Planner.Programs(season, Blocks.FEW, 1)))) {
            var played = new Judge(season).play(truth, forecast, policy);
            var cows = season.eaters().get(0).body().orElseThrow();
            for (int t = 0; t < played.weeks().size(); t++) {
                var week = played.weeks().get(t);
                if (total(week.fedKg()) > 0) {
                    System.out.printf(
                            "| %s | %+.1f | %.2f | %+.0f | %s | %s | %.2f |%n",
                            season.begins(t),
                            week.known().departed(),
                            cows.score(week.known().reserve()[0]),
                            100 * week.known().lean(),
                            tons(season, week.decision().buy()),
                            tons(season, week.fedKg()),
                            cows.score(week.reserve()[0]));
                }
            }
            System.out.printf(
                    "bought %.0f dollars, emergency hay %.0f tons, grass %d days late, books open by %d grams%n",
                    played.bought(), Unit.TON.fromBase(played.emergencyKg()), played.late(), played.open());
        }
    }

    private static double total(double[] kg) {
        double sum = 0;
        for (double one : kg) {
            sum += one;
        }
        return sum;
    }

    private static String tons(Season season, double[] kg) {
        var all = new ArrayList<String>();
        for (int f = 0; f < kg.length; f++) {
            double tons = Unit.TON.fromBase(kg[f]);
            if (tons >= TELL_TONS) {
                all.add("%s %.0f".formatted(season.feeds().get(f).name(), tons));
            }
        }
        return String.join(", ", all);
    }
}
