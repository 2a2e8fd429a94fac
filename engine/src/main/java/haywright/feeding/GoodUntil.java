package haywright.feeding;

import haywright.cattle.herd.Group;
import haywright.outlook.HerdWeather;
import haywright.ration.HandMix;
import haywright.ration.LeastCostRation;
import haywright.ration.PricedFeed;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Until when a mix is good as it is written, and what ends it: a feed is gone, the cattle come to need more, grass, or
 * simply time to look again.
 *
 * @param day the last day
 * @param gone the feed that is gone then; empty where something else ends it
 */
public record GoodUntil(LocalDate day, Why why, Optional<PricedFeed> gone) {
    /** What ends it. */
    public enum Why {
        FEED_GONE,
        NEED_MORE,
        GRASS,
        LOOK_AGAIN
    }

    private static final int WEEK = 7;

    /** No page is older than this: weights, scores and weather move (judgment). */
    private static final int LOOK_AGAIN_WEEKS = 8;

    /** Share of a need by which a mix may miss before its page is over: less than a pound of hay (judgment). */
    private static final double NEAR_ENOUGH = 0.02;

    static GoodUntil of(Rations rations, Group group, Offer offer) {
        var last = rations.day().plusWeeks(LOOK_AGAIN_WEEKS);
        var ends = new GoodUntil(last, Why.LOOK_AGAIN, Optional.empty());
        var turnout = group.turnout() == null ? rations.ranch().turnout() : group.turnout();
        if (turnout != null && turnout.isAfter(rations.day()) && turnout.isBefore(ends.day)) {
            ends = new GoodUntil(turnout, Why.GRASS, Optional.empty());
        }
        for (var gone : offer.gone().entrySet()) {
            if (gone.getValue().isBefore(ends.day)) {
                ends = new GoodUntil(gone.getValue(), Why.FEED_GONE, Optional.of(gone.getKey()));
            }
        }
        var more = needsMore(rations, group, offer.mix(), ends.day);
        return more.map(day -> new GoodUntil(day, Why.NEED_MORE, Optional.empty()))
                .orElse(ends);
    }

    /** The last day of the week before the one in which a need that is met today is met no more. */
    private static Optional<LocalDate> needsMore(Rations rations, Group group, HandMix mix, LocalDate last) {
        var question = rations.question(group);
        var weather = new HerdWeather(rations.ranch().settings());
        Map<String, Double> put = new HashMap<>();
        mix.portions().forEach(p -> put.put(p.feed().feed().id(), p.kgPutOut()));
        var short_ = unmet(mix);
        for (var day = rations.day().plusDays(WEEK); day.isBefore(last); day = day.plusDays(WEEK)) {
            var then = new LeastCostRation(
                    question.offered(),
                    weather.need(rations.planned(group), day),
                    question.options(),
                    question.sureness(),
                    question.amounts());
            if (!short_.containsAll(unmet(HandMix.judge(then, put)))) {
                return Optional.of(day.minusDays(1));
            }
        }
        return Optional.empty();
    }

    private static List<String> unmet(HandMix mix) {
        return mix.limits().stream()
                .filter(limit -> isNeed(limit.row().id())
                        && limit.margin() < -NEAR_ENOUGH * Math.abs(limit.row().limit()))
                .map(limit -> limit.row().id())
                .toList();
    }

    private static boolean isNeed(String row) {
        return switch (row) {
            case "nem", "growth", "cp", "mp", "mp_rumen", "ca", "p" -> true;
            default -> false;
        };
    }
}
