package haywright.app.exchange;

import haywright.workings.Refused;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.function.Supplier;

/** What is read of a stream, up to a number of bytes: what is packed tells its size only while it is unpacked. */
public final class Bounded extends FilterInputStream {
    private final Supplier<Refused> tooMuch;
    private long left;

    /** @param tooMuch thrown when there are more bytes than that */
    public Bounded(InputStream in, long most, Supplier<Refused> tooMuch) {
        super(in);
        this.tooMuch = tooMuch;
        left = most;
    }

    @Override
    public int read() throws IOException {
        int read = super.read();
        count(read < 0 ? 0 : 1);
        return read;
    }

    @Override
    public int read(byte[] into, int from, int length) throws IOException {
        int read = super.read(into, from, length);
        count(read);
        return read;
    }

    @Override
    public boolean markSupported() {
        return false;
    }

    private void count(int read) {
        left -= Math.max(0, read);
        if (left < 0) {
            throw tooMuch.get();
        }
    }
}
