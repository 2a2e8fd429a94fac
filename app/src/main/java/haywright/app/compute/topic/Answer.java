package haywright.app.compute.topic;

import haywright.workings.Caution;
import haywright.workings.Worked;
import java.util.List;

/**
 * What a topic gives back.
 *
 * @param yes false where the question has the answer "no", as a ration that cannot exist
 * @param workings what the answer was worked out by, in the order to read it
 */
public record Answer<O extends Record>(O answer, boolean yes, List<Worked> workings, List<Caution> cautions) {
    public Answer {
        workings = List.copyOf(workings);
        cautions = List.copyOf(cautions);
    }

    public static <O extends Record> Answer<O> of(O answer, Worked... workings) {
        return new Answer<>(answer, true, List.of(workings), List.of());
    }
}
