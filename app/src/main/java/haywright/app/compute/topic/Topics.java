package haywright.app.compute.topic;

import java.util.List;
import java.util.stream.Stream;

/** The table of topics. */
public final class Topics {
    public static final List<Topic<?, ?>> ALL = Stream.of(
                    ForageTopics.ALL,
                    List.of(ReportTopic.TOPIC, FeedPriceTopic.TOPIC),
                    EstimateTopics.ALL,
                    SamplingTopics.ALL,
                    List.of(FieldWalkTopic.TOPIC, StockTopic.TOPIC),
                    CattleTopics.ALL,
                    WinterTopics.ALL,
                    List.of(WintersTopic.TOPIC),
                    MixTopics.ALL,
                    ToolTopics.ALL,
                    List.of(RationTopic.TOPIC, RationsTopic.TOPIC, TestWorthTopic.TOPIC))
            .<Topic<?, ?>>flatMap(List::stream)
            .toList();

    private Topics() {}
}
