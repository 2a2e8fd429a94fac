package haywright.workings;

import java.util.List;

/** Something that can say how it was worked out, line by line in the order of its published source. */
public interface Worked {
    /** The lines of the work, the result last. Built anew at each call. */
    List<Line> lines();
}
