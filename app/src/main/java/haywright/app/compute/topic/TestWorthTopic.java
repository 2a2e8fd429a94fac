package haywright.app.compute.topic;

import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.compute.shape.Key;
import haywright.feeding.Rations;
import haywright.feeding.worth.WorthOfASample;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.workings.Caution;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What one more sample of a lot is worth to a ranch. */
public final class TestWorthTopic {
    private static final Source COUNTED = Source.judgment("what falling short comes to");

    private TestWorthTopic() {}

    static final Topic<In, Out> TOPIC = new Topic<>(
            "test-worth",
            "What one more sample of a lot is worth to a ranch.",
            In.class,
            Out.class,
            "{\"lot\":\"Meadow hay\",\"ranch\":" + OfARanch.small() + "}",
            TestWorthTopic::answer);

    record In(
            @Key(words = OfARanch.WORDS) ObjectNode ranch,

            @Key(words = "The name of the lot; every lot is answered when not said.") @Nullable
            String lot,

            @Key(words = OfARanch.DATE) @Nullable LocalDate date) {}

    /** A question about a ranch that is known: which lot, by its name. */
    public record OfALot(String lot) {}

    /** What a sample of one lot is worth. */
    public record Worth(
            String lot,

            @Key(
                    name = "worth_usd",
                    words =
                            "Dollars for all groups until turnout that one more sample by a plan is expected to save, its price taken off.")
            double worth,

            @Key(name = "low_usd", words = "The draws leave it above that 19 times in 20.")
            double low,

            @Key(name = "high_usd", words = "And below that 19 times in 20.")
            double high,

            @Key(name = "price_usd", words = "Of the sample: laboratory, and a person's time.")
            double price)
            implements Worked {
        static Worth of(Rations rations, Lot lot) {
            var worth = WorthOfASample.of(rations, lot);
            return new Worth(lot.name(), worth.worthUsd(), worth.lowUsd(), worth.highUsd(), worth.priceUsd());
        }

        @Override
        public List<Line> lines() {
            return List.of(new Line(
                    "worth",
                    "saved - price",
                    worth,
                    Unit.DOLLAR,
                    COUNTED,
                    List.of(
                            new Input(
                                    "saved",
                                    worth + price,
                                    Unit.DOLLAR,
                                    new Origin.Typed(
                                            "what falling short of the needs and feeding come to, over results drawn")),
                            new Input(
                                    "price", price, Unit.DOLLAR, new Origin.Typed("laboratory and a person's time")))));
        }
    }

    /** Of one lot its worth, of all a list of them. */
    record Out(
            LocalDate date,
            @Key(inline = true) @Nullable Worth one,
            @Nullable List<Worth> lots) {}

    private static Answer<Out> answer(In in) {
        var rations = OfARanch.rations(in.ranch(), in.date());
        var worths = OfARanch.lots(rations.ranch(), in.lot()).stream()
                .map(lot -> Worth.of(rations, lot))
                .toList();
        return answer(
                in.lot() == null ? new Out(rations.day(), null, worths) : new Out(rations.day(), worths.get(0), null),
                worths);
    }

    /** Of a lot of a ranch that is known. */
    public static Answer<Worth> answer(Rations rations, Lot lot) {
        var worth = Worth.of(rations, lot);
        return answer(worth, List.of(worth));
    }

    private static <O extends Record> Answer<O> answer(O answer, List<Worth> worths) {
        return new Answer<>(
                answer,
                true,
                List.copyOf(worths),
                List.of(new Caution(
                        "Dollars are of feed and of falling short, not of animals: never feed what was not tested for a danger because a test seems to be worth little.",
                        COUNTED)));
    }
}
