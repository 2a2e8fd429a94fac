package haywright.season.play;

import haywright.lp.Budget;
import haywright.lp.Optimum;
import haywright.season.given.Body;
import haywright.season.given.Forecast;
import haywright.season.given.Prices;
import haywright.season.given.Season;
import haywright.season.given.SeasonFeed;
import java.util.Arrays;
import java.util.List;

/**
 * Plays whole winters: each week a policy is told what is known and decides, and what is true happens. One truth, one policy:
 * the same bytes on any thread.
 */
public final class Judge {
    private final Season season;
    private final Prices prices;
    private final List<List<Judged>> judged;

    public Judge(Season season) {
        this.season = season;
        prices = new Prices(season);
        judged = Judged.all(season);
    }

    public Played play(Truth truth, Forecast forecast, Policy policy) {
        return new Play(season, prices, judged, truth, forecast).to(policy);
    }

    /** What is known on the first day. */
    public static Known start(Season season) {
        return new Known(
                0,
                season.eaters().stream().mapToInt(eater -> eater.fed(0, 0)).toArray(),
                season.feeds().stream().mapToDouble(SeasonFeed::kg).toArray(),
                faces(season),
                season.feeds().stream().mapToDouble(SeasonFeed::canBuy).toArray(),
                reserves(season),
                0,
                0,
                0,
                0);
    }

    static Known.Face[] faces(Season season) {
        return season.feeds().stream()
                .map(feed -> feed.meant().isOpen() ? Known.Face.OPEN : Known.Face.CLOSED)
                .toArray(Known.Face[]::new);
    }

    static double[] reserves(Season season) {
        return season.eaters().stream()
                .mapToDouble(eater -> eater.body().map(Body::start).orElse(0.0))
                .toArray();
    }

    /**
     * The same winter, planned by one who knows all of it.
     *
     * @param cost dollars by the same accounting: no policy costs less
     * @param decisions of every week
     */
    public record Foreseen(double cost, List<Decision> decisions) {}

    public Foreseen foreseen(Truth truth, Forecast forecast) {
        var start = start(season);
        var stock = start.stock().clone();
        Arrays.setAll(stock, f -> stock[f] * truth.weight()[f]);
        int[] days = season.eaters().stream()
                .mapToInt(eater -> eater.fed(0, season.record().late()[truth.winter()]))
                .toArray();
        var known = new Known(0, days, stock, start.face(), start.canBuy(), start.reserve(), 0, 0, 0, 0);
        var program = new PlanProgram(season, Blocks.weekly(season), truth.made(), 1, false);
        try (var session = program.open()) {
            program.move(session, known, List.of(Ahead.known(season, forecast, truth)));
            if (session.solve(Budget.UNLIMITED) instanceof Optimum optimum) {
                return new Foreseen(optimum.objective(), program.decisions(optimum, session.basis()));
            }
            throw new IllegalStateException("a winter without an optimum, though everything can be missed");
        }
    }
}
