package org.bookholder.speech.wav;

import java.nio.ByteBuffer;

/** How a sample is written in a WAV file; reads one as a value of -1 to 1. */
enum SampleFormat {
    /** Unsigned, 128 is silence. */
    INT_8(1) {
        @Override
        double at(ByteBuffer bytes, int offset) {
            return ((bytes.get(offset) & 0xff) - 128) / 128.0;
        }
    },
    /** Signed, little-endian. */
    INT_16(2) {
        @Override
        double at(ByteBuffer bytes, int offset) {
            return bytes.getShort(offset) / 32_768.0;
        }
    },
    /** Signed, little-endian. */
    INT_24(3) {
        @Override
        double at(ByteBuffer bytes, int offset) {
            return ((bytes.get(offset + 2) << 16) | (bytes.getShort(offset) & 0xffff)) / 8_388_608.0;
        }
    },
    /** Signed, little-endian. */
    INT_32(4) {
        @Override
        double at(ByteBuffer bytes, int offset) {
            return bytes.getInt(offset) / 2_147_483_648.0;
        }
    },
    /** IEEE 754 single precision; values beyond -1 and 1 are allowed. */
    FLOAT_32(4) {
        @Override
        double at(ByteBuffer bytes, int offset) {
            return bytes.getFloat(offset);
        }
    },
    /** IEEE 754 double precision; values beyond -1 and 1 are allowed. */
    FLOAT_64(8) {
        @Override
        double at(ByteBuffer bytes, int offset) {
            return bytes.getDouble(offset);
        }
    };

    private final int bytes;

    SampleFormat(int bytes) {
        this.bytes = bytes;
    }

    /** Bytes that one sample of one channel takes. */
    int bytes() {
        return bytes;
    }

    /** The sample at {@code offset} of a little-endian buffer. */
    abstract double at(ByteBuffer bytes, int offset);

    /** Mixes the channels of a frame in equal parts to one 16-bit sample; values out of range are clipped. */
    short mixed(ByteBuffer bytes, int offset, int channels) {
        double sum = 0;
        for (int c = 0; c < channels; c++) {
            sum += at(bytes, offset + c * this.bytes);
        }
        return rounded(sum / channels);
    }

    /** One channel of a frame as a 16-bit sample; values out of range are clipped. */
    short channel(ByteBuffer bytes, int offset, int channel) {
        return rounded(at(bytes, offset + channel * this.bytes));
    }

    private static short rounded(double sample) {
        long value = Math.round(sample * 32_768);
        return (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, value));
    }
}
