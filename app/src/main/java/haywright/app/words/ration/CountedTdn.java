package haywright.app.words.ration;

import haywright.app.words.NumberWords;
import haywright.forage.energy.HeldTdn;
import haywright.outlook.Yard;
import haywright.ranch.Lot;
import haywright.ration.Portion;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

/**
 * A lot whose energy is not counted by the TDN that its laboratory printed, because another way to TDN goes before it.
 *
 * @param printed TDN by the laboratory, % of dry matter
 * @param counted TDN that the ration goes by, % of dry matter
 */
public record CountedTdn(Lot lot, double printed, double counted, boolean held) {
    /** Points below which nobody feeds another way. */
    private static final double LEAST = 1;

    /** Of the ranch's own lots in a mix, those more than a point apart. */
    public static List<CountedTdn> of(Yard yard, List<Portion> portions) {
        return portions.stream()
                .map(portion -> yard.ranch()
                        .lots()
                        .get(UUID.fromString(portion.feed().feed().id())))
                .filter(Objects::nonNull)
                .flatMap(lot -> {
                    var energy = yard.composition(lot).energy();
                    return energy.printed().stream()
                            .flatMap(printed -> energy.used().stream()
                                    .map(used -> new CountedTdn(
                                            lot,
                                            printed.percent(),
                                            used.percent(),
                                            used instanceof HeldTdn line && line.isHeld())));
                })
                .filter(apart -> Math.abs(apart.points()) > LEAST)
                .toList();
    }

    /** {@code by its fiber}, and how far. */
    public String why() {
        return held ? "by its fiber, held to 3 points over the lab’s" : "by its fiber";
    }

    /** Counted over printed; below 0 where less is counted. */
    public double points() {
        return counted - printed;
    }

    /** Without a digit: {@code two points over}. */
    public String words() {
        int whole = (int) Math.min(99, Math.round(Math.abs(points())));
        return "%s %s %s"
                .formatted(NumberWords.of(whole), whole == 1 ? "point" : "points", points() > 0 ? "over" : "under");
    }
}
