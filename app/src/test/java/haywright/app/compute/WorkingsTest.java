package haywright.app.compute;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import haywright.FormulaCheck;
import haywright.app.compute.shape.Reader;
import haywright.app.compute.topic.Answer;
import haywright.app.compute.topic.Topic;
import haywright.app.compute.topic.Topics;
import haywright.workings.Origin;
import haywright.workings.Worked;
import java.io.IOException;
import java.util.HashSet;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every formula that a topic shows gives the number it shows, down to what was typed or published. */
class WorkingsTest {
    static Stream<Topic<?, ?>> topics() {
        return Topics.ALL.stream().filter(topic -> !topic.name().equals("report-check"));
    }

    @ParameterizedTest
    @MethodSource("topics")
    void everyFormulaGivesItsNumber(Topic<?, ?> topic) throws IOException {
        var checked = new HashSet<Worked>();
        answer(topic).workings().forEach(worked -> check(worked, checked));
        assertThat(checked).isNotEmpty();
    }

    private static <I extends Record, O extends Record> Answer<O> answer(Topic<I, O> topic) throws IOException {
        return topic.run().apply(Reader.read(topic.in(), new ObjectMapper().readTree(topic.example())));
    }

    private static void check(Worked worked, Set<Worked> checked) {
        if (!checked.add(worked)) {
            return;
        }
        FormulaCheck.reEvaluates(worked);
        for (var line : worked.lines()) {
            for (var input : line.inputs()) {
                if (input.origin() instanceof Origin.Computed computed) {
                    check(computed.by(), checked);
                }
            }
        }
    }
}
