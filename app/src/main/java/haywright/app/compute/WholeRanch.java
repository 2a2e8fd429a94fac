package haywright.app.compute;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.compute.shape.Reader;
import haywright.app.compute.topic.Answer;
import haywright.app.compute.topic.MatchTopic;
import haywright.app.compute.topic.WinterBookTopic;
import haywright.app.document.RanchDocument;
import haywright.feeding.Rations;
import haywright.feeding.SeasonByRations;
import haywright.match.CarryChart;
import haywright.outlook.Yard;
import haywright.ranch.Ranch;
import haywright.season.BookListener;
import haywright.season.BookMaker;
import haywright.season.play.Plan;
import haywright.season.play.Played;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.InputStream;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** What the topics say that are asked of a whole ranch and take their time over it. */
public final class WholeRanch {
    private static final String BOOK = "winter-book";
    private static final String MATCH = "match";

    /** With what words each is listed. */
    public static final List<String> WORDS = List.of(
            "%-22s %s"
                    .formatted(BOOK, "In how many winters of 20 a ranch's feed lasts to turnout, and what to do now."),
            "%-22s %s"
                    .formatted(
                            MATCH,
                            "Which lot of a ranch carries which group, for how many days, or what it is short of."));

    /** Seconds under which how hard a winter to plan for is not chosen, and above which everything is done. */
    private static final double SOON = 10;

    private static final int TELL_EVERY = 10;
    private static final double NANOS = 1e9;

    private WholeRanch() {}

    public static boolean isTopic(String name) {
        return isBook(name) || name.equals(MATCH);
    }

    public static boolean isBook(String name) {
        return name.equals(BOOK);
    }

    /**
     * What a question may say beside the ranch.
     *
     * @param seconds after which no other winter is begun
     * @param seed the same draws the same winters
     * @param periodWeeks of the stretches that each plan looks at after its first week; growing ones where not said
     */
    public record Wanted(
            OptionalDouble seconds,
            @Nullable Integer seed,
            @Nullable Integer periodWeeks) {
        private static final int LONGEST = 12;

        public Wanted {
            if (periodWeeks != null && (periodWeeks < 1 || periodWeeks > LONGEST)) {
                throw new Refused(
                        "periodWeeks",
                        periodWeeks + " weeks",
                        "a stretch is 1 to 12 weeks",
                        "Leave it out for growing ones.");
            }
        }

        /** Where this says nothing, the other. @param threads that play winters. @param progress told in words */
        public Asked or(double otherSeconds, long otherSeed, int threads, Consumer<String> progress) {
            return new Asked(
                    seconds.orElse(otherSeconds), seed == null ? otherSeed : seed, periodWeeks, threads, progress);
        }
    }

    /** All that is asked. */
    public record Asked(double seconds, long seed, @Nullable Integer weeks, int threads, Consumer<String> progress) {
        public Asked {
            if (!(seconds > 0)) {
                throw new Refused(
                        "seconds", seconds + " s", "a book takes some time", "A second or more; 60 for all of it.");
            }
        }
    }

    /** What is said beside a demo: {@code {"seconds":20,"seed":1,"period_weeks":2}}. */
    public static Wanted wanted(InputStream json) throws IOException {
        try {
            var tree = Batch.JSON.readTree(json);
            return tree.isMissingNode()
                    ? new Wanted(OptionalDouble.empty(), null, null)
                    : Reader.read(Wanted.class, tree);
        } catch (JsonProcessingException e) {
            throw new Refused(
                    "json",
                    "the question",
                    "it is no JSON that can be read",
                    "For instance {\"seconds\":20,\"seed\":1}.");
        }
    }

    /** Refused as every topic refuses. @param name of one of these topics */
    public static Compute.Outcome of(String name, Ranch ranch, Asked asked, Clock clock) {
        try {
            var yard = yard(ranch, clock);
            return name.equals(MATCH) ? body(MatchTopic.answer(CarryChart.of(yard)), ranch) : book(yard, asked);
        } catch (Refused refused) {
            return Compute.refused(refused);
        }
    }

    private static Compute.Outcome body(Answer<?> answer, Ranch ranch) {
        return new Compute.Outcome(Compute.body(answer, new RanchDocument().tree(ranch)), Compute.DONE, null);
    }

    private static Compute.Outcome book(Yard yard, Asked asked) {
        var season = SeasonByRations.of(new Rations(yard));
        long began = System.nanoTime();
        var maker = new BookMaker(
                asked.seed,
                BookMaker.DRAWS,
                asked.threads,
                asked.seconds >= SOON,
                asked.seconds >= SOON,
                () -> (System.nanoTime() - began) / NANOS > asked.seconds);
        var weeks = asked.weeks;
        var book = (weeks == null ? maker : maker.byWeeks(weeks)).of(yard, season, telling(asked.progress));
        var outcome = body(WinterBookTopic.answer(book, season), yard.ranch());
        ((ObjectNode) outcome.body()).put("seed", asked.seed);
        return outcome;
    }

    private static Yard yard(Ranch ranch, Clock clock) {
        return new Yard(ranch, ranch.settings().today(LocalDate.now(clock)));
    }

    /** Today's plan as MPS, for any other solver. */
    public static String mps(Ranch ranch, Clock clock) {
        return BookMaker.program(SeasonByRations.of(new Rations(yard(ranch, clock))))
                .toMps();
    }

    private static BookListener telling(Consumer<String> progress) {
        return new BookListener() {
            @Override
            public void doing(String what) {
                progress.accept(what);
            }

            @Override
            public void planned(Plan plan) {
                progress.accept(
                        plan.lasts() ? "planned: it lasts in the winter planned for" : "planned: it falls short");
            }

            @Override
            public void played(int done, int of, Played winter) {
                if (done % TELL_EVERY == 0) {
                    progress.accept("%d of %d winters".formatted(done, of));
                }
            }
        };
    }
}
