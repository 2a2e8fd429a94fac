package haywright.app.report;

import haywright.diet.Diet;
import haywright.diet.Feed;
import haywright.diet.LeftOut;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.hazard.NitrateClass;
import haywright.outlook.FeedingDangers;
import haywright.outlook.Yard;
import haywright.ranch.Lot;
import haywright.ration.Portion;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Short cautions for whoever feeds, each only where its feed is at hand.
 *
 * @see "Bolsen and Bolsen, Silage safety issues: avalanches, abstract T149: stand back three times the height of the
 *     face, never alone (read)"
 * @see "practice limits L02 and L03: grain in one feeding"
 * @see "Signs of nitrate poisoning: from memory, as veterinary texts give them"
 */
final class Cautions {
    static final String GRAIN = "Never give more grain than shown. Too much can kill.";

    private Cautions() {}

    /** What can kill, said before anything else where a page is short: what stays out, nitrate by its order, grain. */
    static List<String> deadly(Yard yard, Diet diet, List<Portion> portions) {
        var says = new ArrayList<>(keepOut(diet.leftOut()));
        FeedingDangers.ofNitrate(yard, diet, portions).forEach(caution -> says.add(caution.words()));
        says.addAll(mayHoldNitrate(portions));
        if (portions.stream().anyMatch(p -> p.feed().feed().feedClass() == FeedClass.GRAIN)) {
            says.add(GRAIN);
        }
        return says;
    }

    private static List<String> mayHoldNitrate(List<Portion> portions) {
        return portions.stream()
                .map(portion -> portion.feed().feed())
                .filter(Feed::nitrateDanger)
                .map(feed ->
                        "%s can hold nitrate. Weak legs, fast breath or brown gums: stop feeding it and call the vet now."
                                .formatted(feed.name()))
                .toList();
    }

    /** Feeds that could hurt: said on every letter, whether or not anybody feeds them now. */
    static List<String> keepOut(List<LeftOut> leftOut) {
        var names = new LinkedHashMap<String, List<String>>();
        leftOut.stream()
                .filter(LeftOut::danger)
                .forEach(out -> names.computeIfAbsent(why(out), why -> new ArrayList<>())
                        .add(out.feed().name()));
        return names.entrySet().stream()
                .map(e -> "Do not feed %s. %s".formatted(String.join(" or ", e.getValue()), e.getKey()))
                .toList();
    }

    private static String why(LeftOut out) {
        var made = out.feed().composition();
        if (out.feed().feedClass() == FeedClass.NPN) {
            return "Urea needs a nutritionist.";
        }
        if (!made.knows(Analyte.NO3N) && out.feed().nitrateDanger()) {
            return "Not tested for nitrate.";
        }
        return made.value(Analyte.NO3N).orElse(0)
                        > NitrateClass.safeForPregnant().safeUpTo()
                ? "It is too high in nitrate."
                : "It holds too much of what the test found; ask the vet.";
    }

    /** What to mind with what is fed. */
    static List<String> with(List<Portion> portions, Map<UUID, Lot> lots) {
        var says = new ArrayList<String>();
        boolean grain = false;
        boolean face = false;
        says.addAll(mayHoldNitrate(portions));
        for (var portion : portions) {
            var feed = portion.feed().feed();
            grain |= feed.feedClass() == FeedClass.GRAIN;
            var lot = lots.get(UUID.fromString(feed.id()));
            face |= lot != null && lot.storage() == Lot.Storage.BUNKER;
        }
        if (grain) {
            says.add(GRAIN);
        }
        if (face) {
            says.add("Stay back three times the height of the silage face. It can fall. Do not work there alone.");
        }
        return says;
    }
}
