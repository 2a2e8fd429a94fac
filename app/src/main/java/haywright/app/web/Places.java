package haywright.app.web;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.component.LifeCycle;
import org.eclipse.jetty.util.thread.Scheduler;
import org.jspecify.annotations.Nullable;

/**
 * The places there are for connections, and who has them. All come from this machine, so that nobody can be told from
 * others by an address. When places run short the one goes that has kept Haywright waiting for longest: for a head, for
 * the rest of what is sent, or to take its answer. Whoever is being worked for stays.
 *
 * <p>A head has a time limit as a whole, from its first byte: before that it may be we who have not looked yet.
 */
final class Places implements Connection.Listener {
    /** So many may be worked for: no more can wait than are connected, each sends its next request after its last answer. */
    private static final int MOST = 256;

    /** Enough for a browser's six connections and a few programs; the rest is for newcomers, until they are looked at. */
    private static final int PLENTY = 192;

    /** For whom a thread stands still; well below the threads there are. */
    private static final int MOST_THREADS = 8;

    /** Shorter than a person needs to go on to another page. */
    private static final long PAUSE_NANOS = 1_000_000_000;
    /** More than a page and all that belongs to it. */
    private static final int MANY_IN_A_ROW = 30;

    /** Who knocks before a place is free; more would have to knock again a second later. */
    private static final int AT_THE_DOOR = 1024;

    /** By difference, as such clocks may wrap. */
    private static final Comparator<Place> LONGEST_FIRST = (a, b) -> Long.signum(a.since - b.since);

    private final Duration head;
    private final Scheduler scheduler;
    private final Map<Connection, Place> all = new HashMap<>();
    private final List<ServerConnector> doors = new ArrayList<>();
    private boolean sweeps;

    /** @param head how long it may take to come in, from its first byte; silence before that is Jetty's to end */
    Places(Server server, Duration head) {
        this.head = head;
        scheduler = server.getScheduler();
        server.addEventListener(new LifeCycle.Listener() {
            @Override
            public void lifeCycleStarting(LifeCycle starting) {
                for (var connector : server.getConnectors()) {
                    connector.addEventListener(Places.this);
                    if (connector instanceof ServerConnector port) {
                        port.setAcceptQueueSize(AT_THE_DOOR);
                        doors.add(port);
                    }
                }
            }
        });
    }

    /** Whose request it is. */
    Place of(Request request) {
        var connection = request.getConnectionMetaData().getConnection();
        synchronized (this) {
            var place = all.get(connection);
            return place == null ? new Place(connection) : place; // gone meanwhile
        }
    }

    @Override
    public void onOpened(Connection connection) {
        var place = new Place(connection);
        Runnable leaving = null;
        synchronized (this) {
            if (all.size() >= PLENTY) {
                leaving = longest(one -> !one.isNew());
            }
            if (leaving == null && all.values().stream().filter(Place::isNew).count() > MOST - PLENTY) {
                leaving = longest(one -> true); // so many are new only because they hang
            }
            all.put(connection, place);
            open(all.size() < MOST);
            sweepLater();
        }
        if (leaving != null) {
            leaving.run();
        }
    }

    @Override
    public synchronized void onClosed(Connection connection) {
        all.remove(connection);
        open(all.size() < MOST);
    }

    /** While all are being worked for, whoever knocks waits outside; the first who no longer is makes room. */
    void makeRoom() {
        Runnable leaving = null;
        synchronized (this) {
            if (all.size() >= MOST) {
                leaving = longest(one -> !one.isNew());
            }
        }
        if (leaving != null) {
            leaving.run();
        }
    }

    /** Nobody who was let in is sent away for those who are being worked for: they wait outside. */
    private void open(boolean open) {
        doors.stream().filter(door -> door.isAccepting() != open).forEach(door -> door.setAccepting(open));
    }

    /** Takes the place of whoever has kept us waiting for longest; null when there is nobody of the kind. */
    private @Nullable Runnable longest(Predicate<Place> which) {
        var waiting = all.values().stream()
                .filter(one -> one.leave != null)
                .filter(which)
                .toList();
        if (waiting.isEmpty()) {
            return null;
        }
        var longest = Collections.min(waiting, LONGEST_FIRST);
        all.remove(longest.connection);
        return longest.leave;
    }

    private void sweepLater() {
        if (!sweeps) {
            sweeps = true;
            scheduler.schedule(this::sweep, head.toMillis() / 4, TimeUnit.MILLISECONDS);
        }
    }

    private void sweep() {
        List<Place> late;
        synchronized (this) {
            late = all.values().stream().filter(Place::isLate).toList();
            late.forEach(place -> all.remove(place.connection));
            sweeps = false;
            if (!all.isEmpty()) {
                sweepLater();
            }
        }
        late.forEach(Place::cut);
    }

    /** One connection: what it does and since when. */
    final class Place {
        private final Connection connection;
        private long since = System.nanoTime();
        /** How it goes; null while it is being worked for. */
        private @Nullable Runnable leave;

        private long turn;
        private boolean hasThread;
        private boolean isBetween = true;
        private boolean headBegan;
        private long bytesAtRest;
        private int inARow;
        private long restedAt = System.nanoTime() - PAUSE_NANOS;

        private Place(Connection connection) {
            this.connection = connection;
            leave = this::cut;
        }

        private void cut() {
            connection.getEndPoint().close();
        }

        /** A request of it is here. */
        void asks() {
            synchronized (Places.this) {
                inARow = System.nanoTime() - restedAt < PAUSE_NANOS ? inARow + 1 : 1;
            }
            works();
        }

        /** How many requests it has sent without a pause. */
        int inARow() {
            synchronized (Places.this) {
                return inARow;
            }
        }

        /** It waits for its turn; where places run short, one that asks without end gives its own up. */
        void queues() {
            synchronized (Places.this) {
                if (inARow > MANY_IN_A_ROW) {
                    leave = this::cut;
                }
            }
            makeRoom();
        }

        /** What is to happen now is ours. */
        void works() {
            synchronized (Places.this) {
                turn++;
                leave = null;
                hasThread = false;
                isBetween = false;
            }
        }

        /** Taken before it is asked for something, or given something. */
        long turn() {
            synchronized (Places.this) {
                return turn;
            }
        }

        /** Its answer is to be taken by it. */
        void waits(long asked, boolean withThread) {
            waits(asked, withThread, this::cut);
        }

        /**
         * Something is to come from it, unless it has come already.
         *
         * @param asked its turn before that
         * @param withThread whether a thread stands still until then
         * @param otherwise how it goes where others need the place
         */
        void waits(long asked, boolean withThread, Runnable otherwise) {
            Runnable leaving = null;
            synchronized (Places.this) {
                if (turn != asked) {
                    return;
                }
                since = System.nanoTime();
                leave = otherwise;
                isBetween = false;
                hasThread = withThread;
                if (withThread
                        && all.values().stream().filter(one -> one.hasThread).count() > MOST_THREADS) {
                    leaving = longest(one -> one.hasThread);
                }
            }
            if (leaving != null) {
                leaving.run();
            }
            makeRoom();
        }

        /** Its thread stands still for it no longer. */
        void freesThread() {
            synchronized (Places.this) {
                hasThread = false;
            }
        }

        /** It was answered, and may ask again. */
        void rests() {
            synchronized (Places.this) {
                turn++;
                since = System.nanoTime();
                restedAt = since;
                leave = this::cut;
                hasThread = false;
                isBetween = true;
                headBegan = false;
                bytesAtRest = connection.getBytesIn();
            }
        }

        /** What it sent, if anything, may not have been looked at yet. */
        private boolean isNew() {
            return turn == 0;
        }

        private boolean isLate() {
            if (!isBetween) {
                return false;
            }
            if (!headBegan && connection.getBytesIn() > bytesAtRest) {
                headBegan = true;
                since = System.nanoTime();
            }
            return headBegan && System.nanoTime() - since > head.toNanos();
        }
    }
}
