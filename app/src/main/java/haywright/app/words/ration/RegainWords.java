package haywright.app.words.ration;

import haywright.app.words.Show;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Regain;
import haywright.feeding.Offers;
import haywright.ration.Ration;
import java.time.LocalDate;
import java.util.Optional;

/** What a ration has in it to bring thin cattle to the score they are to calve at. */
public final class RegainWords {
    /** A cent; less is not said. */
    private static final double LEAST = 0.01;

    /** Of a score, below which nobody would see it. */
    private static final double HAIR = 0.05;

    private RegainWords() {}

    /** {@code 4.5}. */
    public static String score(double score) {
        return Show.significant(score, 2);
    }

    /** Of the ration: {@code of it 35 ¢ to bring them from score 4 to 5 by Mar 22}; empty where nothing is regained. */
    public static Optional<String> ofIt(Offers offers) {
        var planned = offers.planned();
        if (offers.sure().isEmpty() || !isRegaining(planned, offers.yard().day())) {
            return Optional.empty();
        }
        var brings = "bring them from score %s to %s by %s"
                .formatted(
                        score(planned.conditionScore()),
                        score(Regain.planned(planned)),
                        Show.day(planned.firstCalving().orElseThrow()));
        return Optional.of(more(offers)
                .map(more -> "of it %s to %s".formatted(Show.cents(more), brings))
                .orElse("enough to " + brings));
    }

    /** Dollars a head and day over what holds them, of cents as they are printed; empty where that is none, or nothing holds them. */
    public static Optional<Double> more(Offers offers) {
        return offers.held()
                .flatMap(held -> offers.sure().map(sure -> sure.cents() - held.cents()))
                .filter(more -> more >= LEAST - 1e-9);
    }

    /**
     * What is to be said beside that: how it is changed, or that these feeds or the days left do not bring them so far, or that
     * they are held though thin.
     */
    public static Optional<String> beside(Offers offers) {
        var group = offers.group();
        var today = offers.yard().day();
        if (!group.animals().calves()
                || group.firstCalving().filter(first -> first.isAfter(today)).isEmpty()
                || !(offers.answer() instanceof Ration)) {
            return Optional.empty();
        }
        double score = group.conditionScore();
        double reached = Regain.planned(offers.planned());
        double wanted = Regain.planned(group);
        double usual = Regain.usual(group);
        var by = Show.day(group.firstCalving().orElseThrow());
        if (reached < wanted - HAIR) {
            return Optional.of(
                    "No ration of these feeds brings them to score %s by %s: %s. It takes richer feed; ask your nutritionist."
                            .formatted(
                                    score(wanted),
                                    by,
                                    reached > score + HAIR
                                            ? "the most is %s, and this one does that".formatted(score(reached))
                                            : "this one holds them at " + score(score)));
        }
        if (group.wantedScore() != null) {
            return reached > score || score >= usual
                    ? Optional.empty()
                    : Optional.of("They are thin and held at score %s, as you asked; %s at calving is usual."
                            .formatted(score(score), score(usual)));
        }
        return wanted < usual - HAIR && score < usual
                ? Optional.of(
                        "Half a score a month, about the most they regain, makes %s by %s; %s at calving is usual."
                                .formatted(score(wanted), by, score(usual)))
                : Optional.empty();
    }

    /** Whether it needs to be fed for more than the score it has. */
    public static boolean isRegaining(Group group, LocalDate today) {
        return Regain.of(group, today).isPresent();
    }

    /** {@code Held at score 4}. */
    public static String held(Group group) {
        return "Held at score " + score(group.conditionScore());
    }

    /** {@code They calve at score 5.5, as they are now.} */
    public static String calveHeld(Group group) {
        return "They calve at score %s, as they are now.".formatted(score(group.conditionScore()));
    }
}
