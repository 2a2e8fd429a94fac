package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.outlook.WorthOfASample;
import haywright.outlook.Yard;
import haywright.ranch.Lot;
import haywright.workings.Caution;
import haywright.workings.Source;
import java.util.List;

/** What one more sample of a lot is worth to a ranch. */
public final class TestWorthTopic {
    private TestWorthTopic() {}

    /** The question: which lot, by its name. */
    public record In(String lot) {}

    record Out(
            @Key(
                    name = "worth_usd",
                    words =
                            "Dollars for all groups until grass that one more sample by a plan is expected to save, its price taken off.")
            double worth,

            @Key(name = "low_usd", words = "The draws leave it above that 19 times in 20.")
            double low,

            @Key(name = "high_usd", words = "And below that 19 times in 20.")
            double high,

            @Key(name = "price_usd", words = "Of the sample: laboratory, and a person's time.")
            double price) {}

    public static Answer<?> answer(Yard yard, Lot lot) {
        var worth = WorthOfASample.of(yard, lot);
        return new Answer<>(
                new Out(worth.worthUsd(), worth.lowUsd(), worth.highUsd(), worth.priceUsd()),
                true,
                List.of(),
                List.of(new Caution(
                        "Dollars are of feed and of falling short, not of animals: never feed what was not tested for a danger because a test seems to be worth little.",
                        Source.judgement("what falling short comes to"))));
    }
}
