package haywright.app.web.winter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;

/** A book that somebody looks at waits neither for those that others left, nor for those that nobody wants any more. */
class LastFirstTest {
    @Test
    void theLastAskedForComesFirstAndWhatIsDroppedNever() throws InterruptedException {
        var maker = new LastFirst("test");
        List<String> made = Collections.synchronizedList(new ArrayList<>());
        var begun = new CountDownLatch(1);
        var goOn = new CountDownLatch(1);
        var all = new CountDownLatch(3);
        maker.put("first", () -> {
            begun.countDown();
            while (goOn.getCount() > 0) {
                Thread.onSpinWait();
            }
            made.add("first");
            all.countDown();
        });
        begun.await();
        assertThat(maker.running()).contains("first");
        for (var one : List.of("a", "b", "c")) {
            maker.put(one, () -> {
                made.add(one);
                all.countDown();
            });
        }
        maker.drop("b");
        goOn.countDown();
        all.await();
        assertThat(made).containsExactly("first", "c", "a");
    }
}
