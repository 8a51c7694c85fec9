/** Cautions that stand on every screen from which somebody may walk to a machine. Common practice. */
export const cautions = {
  danger:
    'Hot surfaces and live parts. Authorised people only. Lock out and tag the machine by the site’s own procedure, prove it dead, let it cool, wear what the site asks for. Never defeat an interlock. Local codes and licensed practice decide.',
  doubt: 'A log points, a meter proves: what stands here is a reason to measure, not to replace.',
} as const;
