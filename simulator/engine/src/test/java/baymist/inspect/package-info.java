/** Tests of inspection, fit and touch-up. */
package baymist.inspect;
